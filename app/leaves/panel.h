#pragma once

#include <QFrame>

class QBoxLayout;
class QLabel;
class QPushButton;

namespace stemwright {

class GridView;

/// A titled part of a place, with the buttons that work its table.
class Panel : public QFrame {
    Q_OBJECT
public:
    Panel(const QString& name, const QString& title, QWidget* parent = nullptr);

    /// A word beside the title, such as a sum.
    void setNote(const QString& note);
    QPushButton* addButton(const QString& name, const QString& label, const QString& accessible);
    /// The table, with buttons to add, remove and move its lines.
    void setTable(GridView* view, const QString& what);
    /// The table alone, where its lines are not hers to add.
    void setTable(GridView* view);
    /// What stands in place of the table as long as it is empty.
    void setEmptyText(const QString& sentence);
    QPushButton* adder() const { return adder_; }
    QBoxLayout* rows() const { return rows_; }
    QBoxLayout* head() const { return head_; }

private:
    QLabel* title_;
    QLabel* note_;
    QLabel* empty_ = nullptr;
    GridView* view_ = nullptr;
    QPushButton* adder_ = nullptr;
    QBoxLayout* rows_;
    QBoxLayout* head_;
};

} // namespace stemwright
