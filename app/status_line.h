#pragma once

#include <QWidget>

class QLabel;
class QTimer;
class QToolButton;

namespace stemwright {

class BestStanding;
class Session;

/// The line below every place: what is placed, how the pot stands, the units; and for some seconds what could
/// not be done.
class StatusLine : public QWidget {
    Q_OBJECT
public:
    explicit StatusLine(Session& session, QWidget* parent = nullptr);

    /// Shows a sentence in place of the figures until it has been read.
    void say(const QString& sentence);
    /// What the board says of where the hand is; empty for nothing.
    void hint(const QString& sentence);

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void refresh();
    /// How the colours stand, beside the best that these leaves allow.
    QString standing() const;
    void showFigures(bool on);

    void showStanding();

    Session& session_;
    BestStanding* best_;
    QLabel* placed_;
    QLabel* drift_;
    QLabel* heights_;
    QLabel* hint_;
    QString hinted_; ///< all of it, however little there is room for
    QLabel* message_;
    QToolButton* units_;
    QTimer* timer_;
};

} // namespace stemwright
