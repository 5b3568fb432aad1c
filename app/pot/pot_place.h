#pragma once

#include "core/figures/findings.h"

#include <QWidget>

#include <vector>

class QComboBox;
class QLabel;
class QListWidget;
class QPushButton;
class QSlider;
class QToolButton;

namespace stemwright {

class FromAbove;
class PlantView;
class Session;
class SightPanel;
class Suggestions;

/// The place *Pot*: the pot from above at the left, the plant in the round beside it.
class PotPlace : public QWidget {
    Q_OBJECT
public:
    PotPlace(Session& session, Suggestions& suggestions, QWidget* parent = nullptr);

    /// What is held is put back; whether anything was.
    bool letGo();
    /// Asks for a file and saves the picture that is shown, larger.
    void savePicture();

Q_SIGNALS:
    /// A leaf was chosen in the plant; slot and tier from 0, −1 for a whole stem.
    void placeChosen(unsigned stem, int tier, int slot);
    /// A sentence for the status line; empty for none.
    void said(const QString& sentence);
    void compareWanted();
    void startWanted();

protected:
    void showEvent(QShowEvent* event) override;

private:
    QWidget* left();
    QWidget* right();
    void refresh();
    void refreshFindings();
    void refreshSight();
    void showOffer();
    void showHint(const QString& said);

    Session& session_;
    Suggestions& suggestions_;
    FromAbove* above_;
    PlantView* view_;
    SightPanel* sight_;
    QListWidget* findings_;
    QLabel* calm_;
    QLabel* hint_;
    QComboBox* viewedFrom_;
    QPushButton* place_;
    QSlider* turn_;
    QSlider* tilt_;
    std::vector<Finding> found_;
    bool stale_ = true;
};

} // namespace stemwright
