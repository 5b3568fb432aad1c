#pragma once

#include "core/plan/id.h"

#include <QColor>
#include <QWidget>

#include <functional>
#include <optional>

class QButtonGroup;
class QHBoxLayout;
class QLabel;
class QMenu;
class QPushButton;

namespace stemwright {

class ColoursModel;
class GridView;
class KindsModel;
class LeafRowsModel;
class LeafPreview;
class MixColoursModel;
class MixesModel;
class Panel;
class Session;
class StockModel;

/// The place Leaves: colours and mixes at the left, kinds and their stock in the middle, the chosen leaf at the
/// right. What cannot be done is said in one sentence at the bottom.
class LeavesPlace : public QWidget {
    Q_OBJECT
public:
    explicit LeavesPlace(Session& session, QWidget* parent = nullptr);
    ~LeavesPlace() override;

    /// Goes to a kind's stock line, as a finding asks for.
    void goTo(KindId kind, MixId mix);
    /// Asks for a colour; a test answers in its stead.
    std::function<std::optional<QColor>(const QColor&, QWidget*)> pickColour;

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void buildLeft(QWidget* column);
    void buildMiddle(QWidget* column);
    void buildRight(QWidget* column);
    void refresh();
    void chooseKind(KindId kind);
    void chooseMix(MixId mix);
    void fillKindTabs();
    void fitRows();
    /// What the table of a leaf's rows has for its colours, px.
    int rowsRoom() const;
    void fitLeft();
    void fitKinds();
    void markRow();
    void fillStockMenu();
    void askColour();
    void askPhoto();
    void askPattern();
    void refuse(const QString& sentence);
    void say(const QString& sentence, bool refusal);
    void calm();
    GridView* watch(GridView* view);

    Session& session_;
    ColoursModel* coloursModel_;
    MixesModel* mixesModel_;
    MixColoursModel* mixColoursModel_;
    KindsModel* kindsModel_;
    StockModel* stockModel_;
    LeafRowsModel* rowsModel_;
    GridView* colours_ = nullptr;
    GridView* mixes_ = nullptr;
    GridView* mixColours_ = nullptr;
    GridView* kinds_ = nullptr;
    GridView* stock_ = nullptr;
    GridView* rows_ = nullptr;
    Panel* coloursPanel_ = nullptr;
    Panel* mixesPanel_ = nullptr;
    Panel* mixColoursPanel_ = nullptr;
    Panel* kindsPanel_ = nullptr;
    Panel* stockPanel_ = nullptr;
    Panel* rowsPanel_ = nullptr;
    QPushButton* giveBack_ = nullptr;
    LeafPreview* preview_ = nullptr;
    QLabel* notice_;
    QWidget* kindTabs_ = nullptr;
    QHBoxLayout* kindTabsRow_ = nullptr;
    QButtonGroup* kindButtons_ = nullptr;
    QMenu* stockMenu_ = nullptr;
    bool choosing_ = false;
};

} // namespace stemwright
