#pragma once

#include "core/plan/plan.h"

#include <QStringList>
#include <QWidget>

#include <vector>

class QLabel;
class QMenu;
class QPushButton;
class QScrollArea;
class QTableWidget;

namespace stemwright {

struct BeforeAfter;
class BoardPicture;
class Session;
class Suggestions;

/// The suggestion that lies over the board: what it does, the pot's figures before and after with what is
/// proved of them, the same by stem, and the buttons to take it, take it for one stem, compare it, or drop it.
/// While one is looked for: how far that is, and a stop. While there is none: what a board that is still empty
/// could begin with.
class OfferPanel : public QWidget {
    Q_OBJECT
public:
    OfferPanel(Session& session, Suggestions& suggestions, QWidget* parent = nullptr);

    /// Fewer empty places than this that the tray could fill are left to the findings.
    static constexpr int manyPlaces = 4;

Q_SIGNALS:
    void compareWanted();
    void startWanted();
    void stemChosen(unsigned stem);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    QWidget* makeDetails();
    void refresh();
    void showOffer();
    struct StemLine {
        StemId stem;
        QStringList cells;
    };
    void fillTable(const QStringList& headings, const std::vector<StemLine>& lines);
    void fillStemChanges(const BeforeAfter& plans);
    /// Stems that change their place in the pot: where from and where to.
    void fillPlaces(const BeforeAfter& plans);
    /// Nothing is offered: a first step for a board that lacks leaves; false where it needs none.
    bool showHint();
    void fitText();
    void fillStems();

    Session& session_;
    Suggestions& suggestions_;
    QLabel* title_;
    QScrollArea* scroll_;
    QLabel* figures_;
    QTableWidget* table_;
    BoardPicture* picture_;
    QPushButton* take_;
    QPushButton* takeForStem_;
    QPushButton* compare_;
    QPushButton* drop_;
    QPushButton* stop_;
    QPushButton* hint_;
    QMenu* stems_;
    QString progress_;
};

} // namespace stemwright
