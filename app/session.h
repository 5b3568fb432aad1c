#pragma once

#include "core/document/history.h"
#include "core/figures/figures.h"
#include "core/figures/findings.h"
#include "core/suggest/suggestion.h"

#include <QObject>
#include <QString>

#include <memory>
#include <optional>

namespace stemwright {

/// What differs after an edit, an undo, or the opening of another plan; told once for each.
struct Change {
    Reach reach;
    /// Another plan altogether: selections and scroll positions mean nothing any more.
    bool anotherPlan = false;
};

/// A changed plan that is shown before it is taken.
struct Offer {
    Edit edit;
    QString title;   ///< what it does: "Turn tier 6 of Stem 3"
    QString figures; ///< what it changes, before and after
    /// Where it came of a search, so that it can be taken for one stem.
    std::optional<Suggestion> suggestion = std::nullopt;
};

/// Owns the plan that is open, and is the only one that changes it. Everything a window shows of a plan comes
/// from here, and everything it does to a plan goes through make().
class Session : public QObject {
    Q_OBJECT
public:
    explicit Session(Plan plan, QObject* parent = nullptr);
    ~Session() override;

    const Plan& plan() const;
    const Figures& figures() const;
    /// Worked out on first asking after a change.
    const std::vector<Finding>& findings() const;
    /// What an edit would do to the figures, without doing it. Cheap enough for every mouse move.
    Result<WhatIf> whatIf(const Edit& edit) const;

    /// Makes the edit, or says why not and leaves everything as it is (failed() is told too, so that the window
    /// can show the sentence; callers need not). Where it reaches tiers that are bound she is asked first; when
    /// she would rather not, nothing happens.
    bool make(const Edit& edit);
    bool canUndo() const;
    bool canRedo() const;
    const Edit* toUndo() const;
    const Edit* toRedo() const;
    void undo();
    void redo();

    /// Opens another plan in place of this one. `path` is empty for one that has never been saved. `saved` is
    /// false for a plan that differs from what is on disk, such as a recovered one.
    void open(Plan plan, const QString& path, bool saved = true);
    QString path() const;
    bool unsaved() const;
    void markSaved(const QString& path);

    /// A suggestion waiting to be taken or dropped; any edit drops it.
    const std::optional<Offer>& offer() const;
    void showOffer(Offer offer);
    /// One edit, one undo.
    void takeOffer();
    void dropOffer();

Q_SIGNALS:
    /// The edit that was just applied, be it made, undone or made again; told before changed().
    void applied(const stemwright::Edit& edit);
    void changed(const stemwright::Change& change);
    /// The path, the title or whether there is unsaved work.
    void documentChanged();
    void offerChanged();
    void failed(const stemwright::Problem& problem);
    /// She was asked about tiers that are bound and would rather not: nothing has changed.
    void declined();

private:
    void follow(Change change);
    /// The edit as she agrees to it; nothing where she does not.
    std::optional<Edit> agreed(const Edit& edit) const;

    struct Private;
    std::unique_ptr<Private> d;
};

} // namespace stemwright
