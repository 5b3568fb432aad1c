#pragma once

#include <QWidget>

namespace stemwright {

class BoardView;
class Session;
class Suggestions;

/// The place *Board*: the board itself, and beside it the skyline, the findings and the supplies.
class BoardPage : public QWidget {
    Q_OBJECT
public:
    explicit BoardPage(Session& session, QWidget* parent = nullptr);

    BoardView& view() { return *view_; }
    Suggestions& suggestions() { return *suggestions_; }

Q_SIGNALS:
    void said(const QString& sentence);
    void compareWanted();
    void startWanted();

private:
    BoardView* view_;
    Suggestions* suggestions_;
};

} // namespace stemwright
