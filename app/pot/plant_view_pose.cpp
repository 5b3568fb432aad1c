// Posing stems in the plant view: what a hand at a stem's tip, or the keys, do to its lean and bend.
#include "app/look.h"
#include "app/pot/plant_view.h"
#include "app/session.h"
#include "app/wording.h"

#include <QKeyEvent>

#include <algorithm>
#include <cmath>

namespace stemwright {

namespace {

constexpr double keyStep = 3; ///< degrees

/// What is to the right, and what to the front, of who looks at the plant turned so.
Point3 rightOf(int turn) {
    const double a = inRadians(degrees(turn));
    return {std::cos(a), -std::sin(a), 0};
}
Point3 frontOf(int turn) {
    const double a = inRadians(degrees(turn));
    return {-std::sin(a), -std::cos(a), 0};
}

/// The angle of turn that names a horizontal direction, in whole degrees.
Angle turnOf(const Point3& way) {
    const double deg = std::round(std::atan2(-way.y, -way.x) * 180 / M_PI);
    return degrees(std::fmod(deg + 360, 360));
}

} // namespace

std::optional<StemId> PlantView::tipNear(QPointF at) const {
    std::optional<StemId> nearest;
    double least = look::target;
    for (const StemBody& stem : scene_->body.stems) {
        const QPointF off = framing().onPicture(view().point(stem.tip)) - at;
        if (const double far = std::hypot(off.x(), off.y()); far < least)
            least = far, nearest = stem.stem;
    }
    return nearest;
}

/// Across the picture the tip goes with the hand; down the picture, as far towards the eye. An even bend moves
/// the tip half as far as a lean by the same angle.
void PlantView::poseByHand(QPointF off, bool bend) {
    double long_ = 1;
    for (const StemBody& stem : scene_->body.stems)
        if (stem.stem == chosen_)
            for (const StemPiece& piece : stem.pieces)
                long_ += length(piece.to - piece.from);
    const double deg = std::hypot(off.x(), off.y()) / (long_ * framing().scale) * (180 / M_PI) * (bend ? 2 : 1);
    const Pose wanted = leaned(from_, rightOf(turn_) * off.x() + frontOf(turn_) * off.y(), deg, bend);
    const Pose pose = withinHold(wanted);
    holdPose(pose, pose != wanted);
}

bool PlantView::poseByKey(QKeyEvent* event) {
    Point3 way;
    switch (event->key()) {
    case Qt::Key_Left:
        way = rightOf(turn_) * -1.0;
        break;
    case Qt::Key_Right:
        way = rightOf(turn_);
        break;
    case Qt::Key_Up:
        way = frontOf(turn_) * -1.0;
        break;
    case Qt::Key_Down:
        way = frontOf(turn_);
        break;
    default:
        return false;
    }
    if (!chosen_) {
        Q_EMIT said(tr("Choose a stem to lean: click it in the pot from above, or go there by Shift+Tab"));
        return true;
    }
    from_ = poseOf(chosen_);
    held_ = withinHold(leaned(from_, way, keyStep, event->modifiers() & Qt::ShiftModifier));
    dropPose();
    return true;
}

Pose PlantView::poseOf(StemId stem) const {
    const Stem* found = stemwright::find(session_.plan(), stem);
    return found && found->pose ? *found->pose : Pose{};
}

/// The pose as far as the chosen stem's wires would hold it: leaning by an angle, its weight pulls at the clay
/// line with the sine of that angle of the moment that it has laid level, so hold (core/figures/hold.h) must be
/// no less than the sine. A bowed stem leans, in the mean, by its lean and half of its bend.
Pose PlantView::withinHold(Pose pose) const {
    for (const StemFigures& figures : session_.figures().stems) {
        const double hold = figures.hold.hold;
        if (figures.stem != chosen_ || hold <= 0 || hold >= 1)
            continue;
        const double most = std::floor(std::asin(hold) * 180 / M_PI);
        pose.lean = degrees(std::min(inDegrees(pose.lean), most));
        pose.bend = degrees(std::clamp(inDegrees(pose.bend), 2 * (-most - inDegrees(pose.lean)),
                                       2 * (most - inDegrees(pose.lean))));
    }
    return pose;
}

/// The pose with its lean (or bend) moved by `deg` towards a horizontal direction, in whole degrees.
Pose PlantView::leaned(const Pose& from, Point3 way, double deg, bool bend) const {
    Pose out = from;
    if (length(way) < 1e-9)
        return out;
    if (bend) {
        // A bend keeps the plane that it has; without one it takes the direction given.
        const bool upright = from.lean == Angle{} && from.bend == Angle{};
        if (upright)
            out.toward = turnOf(way);
        const double more = upright ? deg : dot(unit(way), towards(from.toward)) * deg;
        out.bend = degrees(std::round(std::clamp(inDegrees(from.bend) + more, -180.0, 180.0)));
        return out;
    }
    const Point3 sum = towards(from.toward) * inDegrees(from.lean) + unit(way) * deg;
    const double lean = std::round(std::min(length(sum), 90.0));
    out.lean = degrees(lean);
    if (lean > 0)
        out.toward = turnOf(sum);
    return out;
}

void PlantView::holdPose(const Pose& pose, bool limited) {
    held_ = pose;
    const QString said = tr("%1 leans %2°, bends %3°")
                             .arg(nameText(session_.plan(), chosen_))
                             .arg(inDegrees(pose.lean))
                             .arg(inDegrees(pose.bend));
    Q_EMIT hinted(limited ? tr("%1; its wires hold no more").arg(said) : said);
    stir(true);
}

void PlantView::dropPose() {
    if (!held_)
        return;
    const Stem* stem = stemwright::find(session_.plan(), chosen_);
    std::optional<Pose> pose = std::exchange(held_, std::nullopt);
    Q_EMIT hinted({});
    if (!stem)
        return;
    if (pose->lean == Angle{} && pose->bend == Angle{} && pose->extra.empty())
        pose.reset();
    ReformStem edit{chosen_, *stem};
    edit.form.pose = pose;
    session_.make(edit);
    stir(true);
}

void PlantView::cancel() {
    hand_ = Hand::none;
    if (!held_)
        return;
    held_.reset();
    Q_EMIT hinted({});
    stir(true);
}

} // namespace stemwright
