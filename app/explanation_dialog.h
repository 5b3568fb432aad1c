#pragma once

#include "core/figures/explain.h"

#include <QDialog>

#include <vector>

class QTextBrowser;
class QTreeWidget;
class QTreeWidgetItem;

namespace stemwright {

class Session;

/// "How is this reckoned?": every figure of the plan with its value at the left, and for the chosen one at the
/// right the formula in words, the numbers that went in, and the source.
class ExplanationDialog : public QDialog {
    Q_OBJECT
public:
    /// Opens on that figure.
    ExplanationDialog(const Session& session, FigureRef first, QWidget* parent);

private:
    void list(const QString& heading, const std::vector<FigureRef>& refs, FigureRef first);
    void show(const QTreeWidgetItem* item);

    const Session& session_;
    Supplies needs_;
    std::vector<FigureRef> refs_; ///< of the items, by their number
    QTreeWidget* tree_;
    QTextBrowser* text_;
};

} // namespace stemwright
