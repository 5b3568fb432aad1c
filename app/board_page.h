#pragma once

#include <QWidget>

namespace stemwright {

class BoardView;
class Session;
class Suggestions;

/// The place *Board*: the board itself, and beside it the skyline, the findings and the supplies. What is
/// beside it is made as soon as the board has been painted once, so that the first sight of the board need not
/// wait.
class BoardPage : public QWidget {
    Q_OBJECT
public:
    explicit BoardPage(Session& session, QWidget* parent = nullptr);

    BoardView& view() { return *view_; }
    Suggestions& suggestions() { return *suggestions_; }
    /// Makes what is beside the board, where it is not made yet.
    void fillSide();

Q_SIGNALS:
    void said(const QString& sentence);
    void compareWanted();
    void startWanted();

protected:
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    Session& session_;
    BoardView* view_;
    Suggestions* suggestions_;
    QWidget* side_;
};

} // namespace stemwright
