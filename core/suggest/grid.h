#pragma once

#include <cstddef>
#include <vector>

namespace stemwright {

/// A table of numbers by row and column, both counted from 0.
template <class T> class Grid {
public:
    Grid() = default;
    Grid(int rows, int columns, T value = {})
        : rows_(rows),
          columns_(columns),
          cells_(static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns), value) {}

    int rows() const { return rows_; }
    int columns() const { return columns_; }
    T& operator()(int row, int column) { return cells_[at(row, column)]; }
    const T& operator()(int row, int column) const { return cells_[at(row, column)]; }
    /// The cells of one row, side by side.
    const T* row(int r) const { return cells_.data() + at(r, 0); }
    T* row(int r) { return cells_.data() + at(r, 0); }

    friend bool operator==(const Grid&, const Grid&) = default;

private:
    std::size_t at(int row, int column) const {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) +
               static_cast<std::size_t>(column);
    }

    int rows_ = 0;
    int columns_ = 0;
    std::vector<T> cells_;
};

} // namespace stemwright
