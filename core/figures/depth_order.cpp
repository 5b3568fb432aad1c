// The order in which panes are painted: backToFront() of panes.h.
#include "core/figures/pane_parts.h"

#include <algorithm>
#include <cmath>
#include <queue>

namespace stemwright {

namespace {

constexpr double sameDepth = 1e-3; ///< mm
constexpr std::size_t mostPieces = 20'000;
constexpr int mostRingCuts = 2'000;

struct Box {
    double left = 0, top = 0, right = 0, bottom = 0;
};

Box boxOf(const std::vector<SeenPoint>& p) {
    Box box{p[0].x, p[0].y, p[0].x, p[0].y};
    for (const SeenPoint& c : p) {
        box.left = std::min(box.left, c.x);
        box.right = std::max(box.right, c.x);
        box.top = std::min(box.top, c.y);
        box.bottom = std::max(box.bottom, c.y);
    }
    return box;
}

bool meet(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

enum class Relation { apart, behind, before, cutting };

/// Where panes are, by cell of the picture, so that only neighbours are compared.
class Cells {
public:
    explicit Cells(const std::vector<Pane>& panes) {
        Box all;
        double sizes = 0;
        bool first = true;
        for (const Pane& pane : panes) {
            if (pane.corners.empty())
                continue;
            const Box box = boxOf(pane.corners);
            if (first)
                all = box, first = false;
            all.left = std::min(all.left, box.left);
            all.top = std::min(all.top, box.top);
            all.right = std::max(all.right, box.right);
            all.bottom = std::max(all.bottom, box.bottom);
            sizes += std::max(box.right - box.left, box.bottom - box.top);
        }
        const double mean = panes.empty() ? 1 : sizes / static_cast<double>(panes.size());
        const double whole = std::max({all.right - all.left, all.bottom - all.top, 1e-6});
        count_ = std::clamp(static_cast<int>(whole / std::max(mean, whole / 64)), 1, 64);
        all_ = all;
        width_ = std::max(all.right - all.left, 1e-6) / count_;
        height_ = std::max(all.bottom - all.top, 1e-6) / count_;
        cells_.resize(static_cast<std::size_t>(count_ * count_));
    }

    void put(std::size_t index, const Box& box) {
        over(box, [&](std::vector<std::size_t>& cell) { cell.push_back(index); });
    }
    /// Those whose cells meet the box, each once.
    const std::vector<std::size_t>& near(const Box& box) {
        found_.clear();
        ++round_;
        over(box, [&](std::vector<std::size_t>& cell) {
            for (const std::size_t i : cell) {
                if (seen_.size() <= i)
                    seen_.resize(i + 1, 0);
                if (seen_[i] != round_) {
                    seen_[i] = round_;
                    found_.push_back(i);
                }
            }
        });
        return found_;
    }

private:
    template <class Use> void over(const Box& box, const Use& use) {
        const auto cell = [&](double v, double from, double size) {
            return std::clamp(static_cast<int>((v - from) / size), 0, count_ - 1);
        };
        const int right = cell(box.right, all_.left, width_), bottom = cell(box.bottom, all_.top, height_);
        for (int y = cell(box.top, all_.top, height_); y <= bottom; ++y)
            for (int x = cell(box.left, all_.left, width_); x <= right; ++x)
                use(cells_[static_cast<std::size_t>(y * count_ + x)]);
    }

    Box all_;
    int count_ = 1;
    double width_ = 1, height_ = 1;
    std::vector<std::vector<std::size_t>> cells_;
    std::vector<std::size_t> found_;
    std::vector<unsigned> seen_;
    unsigned round_ = 0;
};

/// Sets panes in order, cutting as it goes.
class Sorter {
public:
    explicit Sorter(std::vector<Pane> panes) : cells_(panes), waiting_(std::move(panes)) {
        std::reverse(waiting_.begin(), waiting_.end());
    }

    std::vector<Pane> run() {
        placeAll();
        for (int cuts = 0; cuts < mostRingCuts; ++cuts) {
            order();
            if (order_.size() == live_ || !cutRing())
                break;
            placeAll();
        }
        if (order_.size() < live_)
            breakRings();
        std::vector<Pane> out;
        out.reserve(order_.size());
        for (const std::size_t i : order_)
            out.push_back(std::move(nodes_[i].pane));
        return out;
    }

private:
    struct Node {
        Pane pane;
        PanePlane plane;
        Box box;
        double mean = 0;
        bool gone = false;
        std::vector<std::size_t> before; ///< what is painted after this one: nodes nearer to the eye
        std::vector<std::size_t> behind;
    };

    Relation relate(const Node& a, const Node& b, bool& flat) {
        flat = false;
        if (!meet(a.box, b.box))
            return Relation::apart;
        const std::vector<SeenPoint> shared = sharedPart(a.pane, b.pane);
        if (shared.empty())
            return Relation::apart;
        double least = 1e300, most = -1e300;
        for (const SeenPoint& p : shared) {
            const double ahead = a.plane.at(p.x, p.y) - b.plane.at(p.x, p.y);
            least = std::min(least, ahead);
            most = std::max(most, ahead);
        }
        if (most <= sameDepth && least >= -sameDepth) {
            flat = true;
            return Relation::behind; // as given: what came first is painted first
        }
        if (most <= sameDepth)
            return Relation::behind;
        if (least >= -sameDepth)
            return Relation::before;
        if (live_ + waiting_.size() >= mostPieces)
            return most + least < 0 ? Relation::behind : Relation::before;
        return Relation::cutting;
    }

    /// The two parts of a pane on either side of another's plane.
    static std::pair<Pane, Pane> cut(const Node& node, const PanePlane& plane) {
        const auto ahead = [&](const SeenPoint& p) { return node.plane.at(p.x, p.y) - plane.at(p.x, p.y); };
        Pane front{{}, node.pane.tag, true}, back{{}, node.pane.tag, true};
        keep(node.pane.corners, front.corners, ahead);
        keep(node.pane.corners, back.corners, [&](const SeenPoint& p) { return -ahead(p); });
        return {front, back};
    }

    void wait(Pane pane) {
        if (seenArea(pane.corners) > leastArea)
            waiting_.push_back(std::move(pane));
    }

    void placeAll() {
        while (!waiting_.empty()) {
            Node node;
            node.pane = std::move(waiting_.back());
            waiting_.pop_back();
            if (node.pane.corners.empty())
                continue;
            node.plane = planeOf(node.pane);
            node.box = boxOf(node.pane.corners);
            node.mean = meanNear(node.pane.corners);
            place(std::move(node));
        }
    }

    void place(Node node) {
        const std::size_t self = nodes_.size();
        std::vector<std::pair<std::size_t, Relation>> relations;
        for (const std::size_t i : cells_.near(node.box)) {
            if (nodes_[i].gone || (nodes_[i].pane.tag == node.pane.tag && node.pane.divided))
                continue;
            bool flat = false;
            const Relation relation = relate(node, nodes_[i], flat);
            if (relation == Relation::cutting) {
                auto [front, back] = cut(node, nodes_[i].plane);
                wait(std::move(front));
                wait(std::move(back));
                return;
            }
            if (relation != Relation::apart)
                relations.emplace_back(i, flat ? Relation::before : relation);
        }
        for (const auto& [i, relation] : relations) {
            if (relation == Relation::behind) {
                node.before.push_back(i);
                nodes_[i].behind.push_back(self);
            } else {
                node.behind.push_back(i);
                nodes_[i].before.push_back(self);
            }
        }
        cells_.put(self, node.box);
        nodes_.push_back(std::move(node));
        ++live_;
    }

    /// Takes whatever has nothing left behind it, the farthest first; stops early where only rings are left.
    void order() {
        order_.clear();
        open_.assign(nodes_.size(), 0);
        taken_.assign(nodes_.size(), 0);
        const auto later = [this](std::size_t a, std::size_t b) {
            return nodes_[a].mean != nodes_[b].mean ? nodes_[a].mean > nodes_[b].mean : a > b;
        };
        std::priority_queue<std::size_t, std::vector<std::size_t>, decltype(later)> ready(later);
        for (std::size_t i = 0; i < nodes_.size(); ++i) {
            if (nodes_[i].gone)
                continue;
            for (const std::size_t b : nodes_[i].behind)
                open_[i] += !nodes_[b].gone;
            if (open_[i] == 0)
                ready.push(i);
        }
        while (!ready.empty()) {
            const std::size_t i = ready.top();
            ready.pop();
            take(i, [&](std::size_t next) { ready.push(next); });
        }
    }

    template <class Freed> void take(std::size_t i, const Freed& freed) {
        order_.push_back(i);
        taken_[i] = 1;
        for (const std::size_t next : nodes_[i].before)
            if (!nodes_[next].gone && !taken_[next] && --open_[next] == 0)
                freed(next);
    }

    /// Divides one pane of a ring by the plane of the one that is behind it, so that the ring opens.
    bool cutRing() {
        if (live_ >= mostPieces)
            return false;
        const auto left = [this](std::size_t i) { return !nodes_[i].gone && !taken_[i]; };
        std::size_t at = 0;
        while (!left(at))
            ++at;
        // What is left has something left behind it, so walking backward comes round.
        std::vector<std::size_t> walk;
        std::vector<char> met(nodes_.size(), 0);
        while (!met[at]) {
            met[at] = 1;
            walk.push_back(at);
            at = *std::find_if(nodes_[at].behind.begin(), nodes_[at].behind.end(), left);
        }
        const auto first = std::find(walk.begin(), walk.end(), at);
        for (auto it = first; it != walk.end(); ++it) {
            const std::size_t behind = it + 1 == walk.end() ? *first : *(it + 1);
            if (replace(*it, cut(nodes_[*it], nodes_[behind].plane)) ||
                replace(behind, cut(nodes_[behind], nodes_[*it].plane)))
                return true;
        }
        // No plane of the ring divides a neighbour: the largest is halved as it is seen.
        const auto largest = std::max_element(first, walk.end(), [this](std::size_t a, std::size_t b) {
            return seenArea(nodes_[a].pane.corners) < seenArea(nodes_[b].pane.corners);
        });
        return replace(*largest, halved(nodes_[*largest]));
    }

    /// Puts two parts in a pane's place, if both are of any size.
    bool replace(std::size_t index, std::pair<Pane, Pane> parts) {
        if (seenArea(parts.first.corners) <= leastArea || seenArea(parts.second.corners) <= leastArea)
            return false;
        nodes_[index].gone = true;
        --live_;
        wait(std::move(parts.first));
        wait(std::move(parts.second));
        return true;
    }

    static std::pair<Pane, Pane> halved(const Node& node) {
        const Box& box = node.box;
        const bool wide = box.right - box.left > box.bottom - box.top;
        const double middle = wide ? (box.left + box.right) / 2 : (box.top + box.bottom) / 2;
        const auto after = [&](const SeenPoint& p) { return (wide ? p.x : p.y) - middle; };
        Pane one{{}, node.pane.tag, true}, other{{}, node.pane.tag, true};
        keep(node.pane.corners, one.corners, after);
        keep(node.pane.corners, other.corners, [&](const SeenPoint& p) { return -after(p); });
        return {one, other};
    }

    /// What cannot be divided any more: the farthest first.
    void breakRings() {
        std::vector<std::size_t> left;
        for (std::size_t i = 0; i < nodes_.size(); ++i)
            if (!nodes_[i].gone && !taken_[i])
                left.push_back(i);
        std::stable_sort(left.begin(), left.end(),
                         [this](std::size_t a, std::size_t b) { return nodes_[a].mean < nodes_[b].mean; });
        order_.insert(order_.end(), left.begin(), left.end());
    }

    Cells cells_;
    std::vector<Pane> waiting_;
    std::vector<Node> nodes_;
    std::size_t live_ = 0;
    std::vector<std::size_t> order_;
    std::vector<int> open_;
    std::vector<char> taken_;
};

} // namespace

std::vector<Pane> backToFront(std::vector<Pane> panes) {
    return Sorter(std::move(panes)).run();
}

} // namespace stemwright
