#pragma once

#include "core/figures/binding_steps.h"
#include "core/plan/plan.h"

#include <QWidget>

#include <functional>
#include <optional>
#include <vector>

class QCheckBox;
class QComboBox;
class QLabel;
class QProgressBar;
class QPushButton;
class QVBoxLayout;

namespace stemwright {

class BindPicture;
class Session;
class StemEnd;

/// The place *Bind*: one stem, step by step, in large type for a person with full hands. A key, a foot pedal or
/// a large button marks the step and goes on; each mark is an edit of the plan and is kept at once.
class BindPlace : public QWidget {
    Q_OBJECT
public:
    /// Keeps the plan where a kill cannot reach it, and says where that is, or why it could not.
    using Keep = std::function<QString()>;

    BindPlace(Session& session, Keep keep, QWidget* parent = nullptr);

    /// What tells the milliseconds by which tiers are timed; tests have their own.
    void setClock(std::function<qint64()> clock);

    StemId stem() const { return stem_; }
    void setStem(StemId stem);
    void goOn();
    void goBack();

Q_SIGNALS:
    /// Only the work is to be seen, without what the window has around it.
    void wholeScreenShown(bool whole);

protected:
    void keyPressEvent(QKeyEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void hideEvent(QHideEvent* event) override;
    bool eventFilter(QObject* watched, QEvent* event) override;

private:
    void build();
    QWidget* buildTop();
    QWidget* buildSide();
    QWidget* buildButtons();
    void fillStems();
    void refresh();
    void showStep(const Stem& stem, const std::vector<BindingStep>& steps, std::size_t now);
    void showLeaves(const Stem& stem, int tier);
    void showWraps(const std::vector<BindingStep>& steps, std::size_t now);
    void showTime();
    void showKept(const QString& sentence);
    void showWholeScreen();
    /// The stem to bind after this one; none when all are bound.
    StemId nextStem() const;
    bool isDone(const Stem& stem) const;
    std::size_t placeOfStem() const;

    Session& session_;
    Keep keep_;
    StemId stem_;
    std::function<qint64()> clock_;
    std::optional<qint64> shownAt_; ///< when the tier was shown; only what she sees counts

    QComboBox* stems_ = nullptr;
    QLabel* where_ = nullptr;
    QProgressBar* progress_ = nullptr;
    QCheckBox* asHeld_ = nullptr;
    QCheckBox* timed_ = nullptr;
    QPushButton* wholeScreen_ = nullptr;
    BindPicture* picture_ = nullptr;
    QLabel* title_ = nullptr;
    QLabel* turn_ = nullptr;
    QLabel* doing_ = nullptr;
    QWidget* leaves_ = nullptr;
    QVBoxLayout* leafRows_ = nullptr;
    QLabel* wrap_ = nullptr;
    QLabel* used_ = nullptr;
    QProgressBar* usedBar_ = nullptr;
    QLabel* caution_ = nullptr;
    QLabel* next_ = nullptr;
    StemEnd* end_ = nullptr;
    QLabel* time_ = nullptr;
    QLabel* kept_ = nullptr;
    QPushButton* back_ = nullptr;
    QPushButton* done_ = nullptr;
};

} // namespace stemwright
