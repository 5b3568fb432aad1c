#include "app/bind/bind_place.h"

#include "app/bind/bench_label.h"
#include "app/bind/bind_picture.h"
#include "app/bind/stem_end.h"
#include "app/leaf_painter.h"
#include "app/look.h"
#include "app/session.h"
#include "app/settings.h"
#include "app/sheet_words.h"
#include "app/wording.h"
#include "core/document/bench.h"
#include "core/document/step_text.h"
#include "core/figures/binding_time.h"

#include <QAccessible>
#include <QCheckBox>
#include <QComboBox>
#include <QElapsedTimer>
#include <QKeySequence>
#include <QLabel>
#include <QLocale>
#include <QPainter>
#include <QProgressBar>
#include <QPushButton>
#include <QScrollArea>
#include <QStyle>
#include <QVBoxLayout>

#include <algorithm>

namespace stemwright {

namespace {

constexpr int leafPicture = 58;           ///< px
constexpr double longestTier = 120;       ///< minutes: whoever took longer was not binding
constexpr double shortestTier = 5.0 / 60; ///< minutes: whoever was quicker only marks what was bound before

void setSaid(QLabel* label, const QString& said) {
    label->setText(said);
    label->setVisible(!said.isEmpty());
}

bool hasLeaf(const Tier& tier) {
    return std::any_of(tier.slots.begin(), tier.slots.end(), [](const Slot& slot) { return slot.filled(); });
}

QPixmap pictureOf(const LeafLook& look, double ratio) {
    QPixmap picture(QSize(leafPicture, leafPicture) * ratio);
    picture.setDevicePixelRatio(ratio);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    const double scale = (leafPicture - 6) / std::max({look.length, look.width, 1.0});
    paintLeaf(painter, look, QPointF(leafPicture / 2.0, (leafPicture + look.length * scale) / 2), 0, scale);
    return picture;
}

} // namespace

BindPlace::BindPlace(Session& session, Keep keep, QWidget* parent)
    : QWidget(parent), session_(session), keep_(std::move(keep)) {
    setObjectName(QStringLiteral("bindPlace"));
    setAccessibleName(tr("Bind: one stem, step by step"));
    setFocusPolicy(Qt::StrongFocus);
    QElapsedTimer timer;
    timer.start();
    clock_ = [timer] { return timer.elapsed(); };
    build();
    connect(&session_, &Session::changed, this, [this](const Change& change) {
        if (change.anotherPlan)
            stem_ = {};
        if (change.anotherPlan || !stemwright::find(session_.plan(), stem_))
            stem_ = nextStem();
        fillStems();
        refresh();
        // An undo is progress too.
        if (!change.anotherPlan && isVisible())
            showKept(keep_());
    });
    stem_ = nextStem();
    fillStems();
    refresh();
}

bool BindPlace::isDone(const Stem& stem) const {
    const std::vector<BindingStep> steps = bindingSteps(session_.plan(), stem);
    return stepNow(stem, steps) == steps.size();
}

StemId BindPlace::nextStem() const {
    const std::vector<Stem>& stems = session_.plan().stems;
    if (stems.empty())
        return {};
    const Stem* here = stemwright::find(session_.plan(), stem_);
    const std::size_t from = here ? placeOfStem() + 1 : 0;
    for (std::size_t i = 0; i < stems.size(); ++i) {
        const Stem& stem = stems[(from + i) % stems.size()];
        if (stem.id != stem_ && !stem.tiers.empty() && !isDone(stem))
            return stem.id;
    }
    return here ? StemId{} : stems.front().id;
}

std::size_t BindPlace::placeOfStem() const {
    return static_cast<std::size_t>(stemwright::find(session_.plan(), stem_) - session_.plan().stems.data());
}

void BindPlace::setStem(StemId stem) {
    if (!stemwright::find(session_.plan(), stem))
        return;
    stem_ = stem;
    fillStems();
    refresh();
}

void BindPlace::fillStems() {
    const QSignalBlocker quiet(stems_);
    stems_->clear();
    for (const Stem& stem : session_.plan().stems) {
        const auto bound = std::count_if(stem.tiers.begin(), stem.tiers.end(),
                                         [](const Tier& tier) { return tier.progress.bound; });
        const auto all = static_cast<std::ptrdiff_t>(stem.tiers.size());
        const QString how = all == 0       ? tr("no leaves")
                            : bound == 0   ? tr("not begun")
                            : bound < all  ? tr("%1 of %2 tiers").arg(bound).arg(all)
                            : isDone(stem) ? tr("bound ✓")
                                           : tr("all tiers");
        stems_->addItem(tr("%1: %2").arg(text(stem.name), how), stem.id.value);
        if (stem.id == stem_)
            stems_->setCurrentIndex(stems_->count() - 1);
    }
    stems_->setEnabled(stems_->count() > 0);
}

void BindPlace::goOn() {
    const Stem* stem = stemwright::find(session_.plan(), stem_);
    if (!stem)
        return;
    const double minutes =
        timed_->isChecked() && shownAt_ ? static_cast<double>(clock_() - *shownAt_) / 60'000 : 0;
    const bool worked = minutes >= shortestTier && minutes <= longestTier;
    // Turns around no wires bind nothing.
    const std::vector<BindingStep> steps = bindingSteps(session_.plan(), *stem);
    if (const std::size_t now = stepNow(*stem, steps);
        now < steps.size() && steps[now].code == BindingStepCode::tier &&
        !hasLeaf(stem->tiers[static_cast<std::size_t>(steps[now].tier)]))
        return;
    const std::optional<Edit> edit = stepDone(session_.plan(), stem_, worked ? minutes : 0);
    shownAt_ = clock_();
    if (edit) {
        session_.make(*edit);
        return;
    }
    if (const StemId next = nextStem())
        setStem(next);
    setFocus();
}

void BindPlace::goBack() {
    shownAt_ = clock_();
    if (const std::optional<Edit> edit = stepBack(session_.plan(), stem_))
        session_.make(*edit);
}

void BindPlace::refresh() {
    const Stem* stem = stemwright::find(session_.plan(), stem_);
    picture_->setVisible(stem != nullptr);
    end_->setVisible(false);
    if (!stem) {
        for (QLabel* said : {turn_, doing_, wrap_, used_, caution_, next_, where_})
            setSaid(said, {});
        setSaid(title_, tr("No stems yet"));
        setSaid(doing_, tr("A stem is added on the board (%1), or with a new plan (%2).")
                            .arg(QKeySequence(Qt::CTRL | Qt::Key_2).toString(QKeySequence::NativeText),
                                 QKeySequence(QKeySequence::New).toString(QKeySequence::NativeText)));
        leaves_->hide();
        usedBar_->hide();
        for (QWidget* part :
             std::initializer_list<QWidget*>{stems_, progress_, asHeld_, timed_, wholeScreen_, done_, back_})
            part->hide();
        showTime();
        return;
    }
    for (QWidget* part : std::initializer_list<QWidget*>{stems_, asHeld_, timed_, wholeScreen_, done_, back_})
        part->show();
    const std::vector<BindingStep> steps = bindingSteps(session_.plan(), *stem);
    const std::size_t now = stepNow(*stem, steps);
    const int count = static_cast<int>(steps.size());
    progress_->show();
    progress_->setRange(0, std::max(1, count));
    progress_->setValue(static_cast<int>(now));
    setSaid(where_, count == 0            ? QString()
                    : now == steps.size() ? tr("all %1 steps done").arg(count)
                                          : tr("step %1 of %2").arg(now + 1).arg(count));
    back_->setEnabled(now > 0);
    showStep(*stem, steps, now);
    showTime();
    // Whoever hears the window rather than sees it is told the step.
    setAccessibleDescription(QStringList{title_->text(), turn_->text(), doing_->text(), wrap_->text()}
                                 .join(QLatin1Char(' '))
                                 .simplified());
    QAccessibleEvent event(this, QAccessible::DescriptionChanged);
    QAccessible::updateAccessibility(&event);
}

void BindPlace::showStep(const Stem& stem, const std::vector<BindingStep>& steps, std::size_t now) {
    const Plan& plan = session_.plan();
    const TranslatedWords words(plan.units);
    const StemFigures& figures = session_.figures().stems[placeOfStem()];
    setSaid(turn_, {});
    setSaid(doing_, {});
    setSaid(wrap_, {});
    setSaid(caution_, {});
    setSaid(next_, {});
    leaves_->hide();
    showWraps(steps, now);
    if (now == steps.size()) {
        picture_->setStep(stem.id, -1, {});
        const StemId next = nextStem();
        if (steps.empty()) {
            setSaid(title_, tr("Nothing to bind"));
            setSaid(doing_, tr("%1 has no leaves and no core wire yet.").arg(text(stem.name)));
        } else {
            setSaid(title_, tr("%1 is bound").arg(text(stem.name)));
            end_->setStem(stem.id);
        }
        done_->setEnabled(static_cast<bool>(next));
        done_->setText(next ? tr("Next: %1").arg(nameText(plan, next)) : tr("All stems are bound"));
        return;
    }
    const BindingStep& step = steps[now];
    done_->setEnabled(true);
    done_->setText(tr("Done, go on"));
    if (step.code == BindingStepCode::tier) {
        const Tier& tier = stem.tiers[static_cast<std::size_t>(step.tier)];
        picture_->setStep(stem.id, step.tier, hasLeaf(tier) ? step.along : Length{});
        setSaid(turn_, text(turnText(stem, step, words)));
        setSaid(title_, tr("Tier %1: %2").arg(step.tier + 1).arg(text(facingText(tier, words))));
        showLeaves(stem, step.tier);
        if (step.along > Length{})
            setSaid(wrap_, tr("then wrap %1").arg(sizeText(step.along, plan.units)));
    } else {
        const bool atTip = step.code == BindingStepCode::begin && !stem.tiers.empty();
        picture_->setStep(stem.id, atTip ? 0 : -1, step.code == BindingStepCode::tail ? step.along : Length{});
        switch (step.code) {
        case BindingStepCode::cut:
            setSaid(title_, tr("Cut to length"));
            break;
        case BindingStepCode::begin:
            setSaid(title_, tr("Lay in the tail"));
            break;
        case BindingStepCode::stake:
            setSaid(title_, tr("Add the stake"));
            break;
        case BindingStepCode::tail:
            setSaid(title_, tr("Wrap the tail"));
            break;
        case BindingStepCode::finish:
            setSaid(title_, tr("Finish off"));
            break;
        default:
            setSaid(title_, plan.binding.wraps[step.wrap].with == WrapWith::tape ? tr("Tape the stem")
                                                                                 : tr("Wind the next layer"));
        }
        setSaid(doing_, text(stepText(plan, stem, figures, step, words)));
        if (step.code == BindingStepCode::tail || step.code == BindingStepCode::cover)
            setSaid(wrap_, tr("wrap %1").arg(sizeText(step.along, plan.units)));
    }
    QStringList cautions;
    if (cutsWire(plan, step))
        cautions << text(words.caution(SheetCaution::cutWire)) << text(words.caution(SheetCaution::sharpEnds));
    if (step.code == BindingStepCode::cut)
        for (std::size_t t = 0; t < stem.tiers.size(); ++t)
            if (!hasLeaf(stem.tiers[t]))
                cautions << tr("Tier %1 has no leaf yet, and the lengths are reckoned without one.").arg(t + 1);
    if (step.code == BindingStepCode::tier && !hasLeaf(stem.tiers[static_cast<std::size_t>(step.tier)])) {
        setSaid(wrap_, {});
        done_->setEnabled(false);
        cautions << tr("There is nothing to bind here: give this tier its leaves on the board, or remove it. "
                       "Then go on.");
    }
    setSaid(caution_, cautions.join(QLatin1Char('\n')));
    if (now + 1 < steps.size())
        setSaid(next_, tr("Next: %1").arg(text(stepText(plan, stem, figures, steps[now + 1], words))));
    else
        setSaid(next_, tr("This is the last step of this stem."));
}

void BindPlace::showLeaves(const Stem& stem, int tier) {
    while (QLayoutItem* item = leafRows_->takeAt(0)) {
        delete item->widget();
        delete item;
    }
    const Plan& plan = session_.plan();
    const std::vector<Slot>& places = stem.tiers[static_cast<std::size_t>(tier)].slots;
    std::vector<bool> told(places.size());
    for (std::size_t s = 0; s < places.size(); ++s) {
        if (told[s])
            continue;
        // Leaves that are alike stand in one row, with every side they go to.
        QStringList sides;
        for (std::size_t other = s; other < places.size(); ++other)
            if (places[other].leaf == places[s].leaf) {
                told[other] = true;
                // Where she sees them: turned with the picture.
                const Angle turn = slotTurn(stem.tiers[static_cast<std::size_t>(tier)], other);
                sides << sideText(sideOf(wrapped(turn - picture_->turned(), degrees(360))));
            }
        QString where = sides.join(tr(" and "));
        if (sides.size() > 4)
            where = tr("%1 leaves").arg(sides.size());
        else if (picture_->turned() > degrees(1))
            where = tr("%1 as you hold it").arg(where);
        auto* row = new QWidget(leaves_);
        auto* line = new QHBoxLayout(row);
        line->setContentsMargins(0, 0, 0, 0);
        line->setSpacing(3 * look::unit);
        auto* picture = new QLabel(row);
        picture->setPixmap(pictureOf(lookOf(plan, places[s].leaf), devicePixelRatioF()));
        picture->setFixedSize(leafPicture, leafPicture);
        line->addWidget(picture);
        auto* words = benchLabel(row, "bindLeaf", 1.45);
        words->setText(tr("%1: %2").arg(where, slotText(plan, places[s])));
        line->addWidget(words, 1);
        leafRows_->addWidget(row);
    }
    leaves_->show();
}

void BindPlace::showWraps(const std::vector<BindingStep>& steps, std::size_t now) {
    const Plan& plan = session_.plan();
    const std::vector<WrapFigures>& wraps = session_.figures().stems[placeOfStem()].wraps;
    usedBar_->hide();
    setSaid(used_, {});
    if (steps.empty() || wraps.empty())
        return;
    const TranslatedWords words(plan.units);
    // What has been used when the step before this one was done, of the layer that is wound now.
    const std::size_t w = std::min(now < steps.size() ? steps[now].wrap : std::size_t{0}, wraps.size() - 1);
    if (const Length took = tookOf(session_.plan().stems[placeOfStem()], w); took > Length{}) {
        setSaid(used_,
                text(words.word(SheetWord::cardTook, {words.wrap(plan.binding.wraps[w]), words.cut(took)})));
        return;
    }
    const Length used = now > 0 ? steps[now - 1].used[w] : Length{};
    if (wraps[w].toCut <= Length{})
        return;
    setSaid(used_, tr("%1: %2 used so far, %3 left of the %4 cut")
                       .arg(text(words.wrap(plan.binding.wraps[w])), cutText(used, plan.units),
                            cutText(wraps[w].toCut - used, plan.units), cutText(wraps[w].toCut, plan.units)));
    usedBar_->setRange(0, 1000);
    usedBar_->setValue(static_cast<int>(1000 * inMillimetres(used) / inMillimetres(wraps[w].toCut)));
    usedBar_->show();
}

void BindPlace::showTime() {
    const BindingTime time = bindingTime(session_.plan());
    setSaid(time_, time.minutesLeft() > 0
                       ? tr("%1 min a tier; about %2 of binding left")
                             .arg(QLocale().toString(time.minutesPerTier, 'f', 1),
                                  text(TranslatedWords(session_.plan().units).hours(time.minutesLeft())))
                       : QString());
}

void BindPlace::showKept(const QString& sentence) {
    setSaid(kept_, sentence);
}

} // namespace stemwright
