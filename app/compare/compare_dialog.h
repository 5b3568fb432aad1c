#pragma once

#include "app/session.h"

#include <QDialog>

#include <array>

class QComboBox;
class QLabel;
class QPushButton;
class QScrollArea;

namespace stemwright {

class BoardPicture;
class Suggestions;

/// Two boards side by side: the plan as it is and the suggestions that were found for it, two of them at a
/// time, equally large and scrolled as one, their figures below, and a button to take either.
class CompareDialog : public QDialog {
    Q_OBJECT
public:
    CompareDialog(Session& session, Suggestions& suggestions, QWidget* parent = nullptr);

protected:
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;

private:
    /// One of the two.
    struct Half {
        QComboBox* which = nullptr;
        QScrollArea* scroll = nullptr;
        BoardPicture* picture = nullptr;
        QLabel* figures = nullptr;
        QPushButton* take = nullptr;
    };
    Half makeHalf(const QString& name, const QString& accessible, int chosen);
    /// The edit of the choice; nothing for today's board.
    const Offer* offerOf(const Half& half) const;
    void refresh();
    void fit();
    void take(const Half& half);

    Session& session_;
    std::vector<Offer> offers_;
    std::array<Half, 2> halves_;
};

} // namespace stemwright
