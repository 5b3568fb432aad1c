#pragma once

#include <QWidget>

class QLabel;
class QMenu;
class QPushButton;

namespace stemwright {

class Session;
class Suggestions;

/// The suggestion that lies over the board, in words: what it does, its figures before and after, and the
/// buttons to take it, take it for one stem, or drop it. While one is looked for: how far that is, and a stop.
class OfferPanel : public QWidget {
    Q_OBJECT
public:
    OfferPanel(Session& session, Suggestions& suggestions, QWidget* parent = nullptr);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    void fitText();
    void fillStems();

    Session& session_;
    Suggestions& suggestions_;
    QLabel* title_;
    QLabel* figures_;
    QPushButton* take_;
    QPushButton* takeForStem_;
    QPushButton* drop_;
    QPushButton* stop_;
    QMenu* stems_;
    QString progress_;
};

} // namespace stemwright
