#pragma once

#include "app/fields/entry.h"

#include <QString>
#include <QStringList>
#include <QWidget>

#include <optional>
#include <vector>

class QLabel;
class QPushButton;
class QTableWidget;

namespace stemwright {

/// One value of a material: what it is called, its limits, and how its number is written.
struct MaterialColumn {
    enum class Sort { millimetres, length, number, count };
    QString head;
    Sort sort = Sort::number;
    double least = 0, most = 0; ///< millimetres for lengths
    int decimals = 2;
    bool optional = false; ///< an empty cell is no value
    QString hint{};
};

/// A line of the handbook: shown, never changed.
struct HandbookLine {
    QString name;
    std::vector<std::optional<double>> values;
    QString source;
};

/// An entry of the maker's own. `key` is the place it had when the table was filled, so that what the table
/// does not show of it can be kept.
struct OwnLine {
    QString name;
    std::vector<std::optional<double>> values;
    int key = -1;
};

/// The handbook's lines with their sources, and under them the maker's own, marked as hers, which she adds,
/// changes and removes.
class MaterialTable : public QWidget {
    Q_OBJECT
public:
    MaterialTable(const QString& name, const QString& title, std::vector<MaterialColumn> columns,
                  LengthUnit unit, const OwnLine& fresh, QWidget* parent);

    void fill(const std::vector<HandbookLine>& handbook, const std::vector<OwnLine>& own);
    /// Her lines as they stand. A value that nobody has touched is the one that was filled in, to the last bit.
    std::vector<OwnLine> own() const;
    /// The first cell that cannot be used, named; empty where all can. Goes there.
    QString refusal();

private:
    void addOwn(const OwnLine& line);
    void addFresh();
    void removeChosen();
    QString shown(std::size_t column, const std::optional<double>& value) const;
    Entry<std::optional<double>> read(std::size_t column, const QString& text) const;
    int sourceColumn() const { return static_cast<int>(columns_.size()) + 1; }

    std::vector<MaterialColumn> columns_;
    LengthUnit unit_;
    OwnLine fresh_;
    int handbook_ = 0;         ///< lines
    std::vector<OwnLine> set_; ///< what was filled into her lines, by line
    QTableWidget* table_;
    QPushButton* add_;
    QPushButton* remove_;
    QLabel* source_; ///< of the line that is chosen, in full
};

} // namespace stemwright
