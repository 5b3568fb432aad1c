#pragma once

#include <QString>

#include <functional>
#include <optional>

class QWidget;

namespace stemwright::ask {

// Everything that stops the work with a question goes through here, so that tests can answer it beforehand.

enum class Answer { save, discard, overwrite, saveElsewhere, open, bindAgain, recordOnly, cancel };

/// Unsaved work and the plan is about to be left: save, discard or cancel.
Answer aboutUnsavedWork(QWidget* parent, const QString& title);
/// The file has changed since it was opened: overwrite, save elsewhere or cancel.
Answer aboutChangedFile(QWidget* parent, const QString& file);
/// Unsaved work of a run that ended without a save: open it, discard it, or cancel and be asked again next
/// time.
Answer aboutWorkLeftBehind(QWidget* parent, const QString& title, const QString& when);
/// An edit reaches tiers that are bound: bindAgain (change it; from there on they count as not bound),
/// recordOnly (it is bound so in her hand, and the plan is put right) or cancel.
Answer aboutBoundTiers(QWidget* parent, const QString& question);
/// A sentence that must be read.
void tell(QWidget* parent, const QString& sentence);

/// A file to open or to save to; empty for none.
QString fileToOpen(QWidget* parent, const QString& folder);
/// A picture of any form that Qt reads.
QString imageToOpen(QWidget* parent, const QString& folder);
QString fileToSave(QWidget* parent, const QString& suggested, const QString& filter, const QString& suffix);

/// What a test answers instead of a person. Each is asked with what would have been shown.
struct Stand {
    std::function<Answer(const QString&)> answer;
    std::function<void(const QString&)> told;
    std::function<QString()> file;
};
/// Sets, or with nothing takes away, the stand-in.
void setStand(std::optional<Stand> stand);

} // namespace stemwright::ask
