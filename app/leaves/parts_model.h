#pragma once

#include "app/leaves/table_model.h"
#include "app/wording.h"

#include <vector>

namespace stemwright {

/// A table over one of the plan's own lists, whose parts have an id and a name: a line for each part, removed
/// and moved by its id.
template <class Part, std::vector<Part> Plan::*parts> class PartsModel : public TableModel {
public:
    using Id = decltype(Part::id);

    Id id(int line) const { return Id{key(line)}; }
    QString lineName(int line) const override { return text(part(line).name); }

protected:
    using TableModel::TableModel;

    const Part& part(int line) const { return (plan().*parts).at(static_cast<std::size_t>(line)); }
    static Part& part(Plan& draft, int line) { return (draft.*parts).at(static_cast<std::size_t>(line)); }

    std::vector<std::uint32_t> keysOf(const Plan& plan) const override {
        std::vector<std::uint32_t> keys;
        for (const Part& each : plan.*parts)
            keys.push_back(each.id.value);
        return keys;
    }
    std::optional<Edit> removal(const QList<int>& lines, QString&) const override {
        Batch batch{Deed::removePart, {}};
        for (const int line : lines)
            batch.edits.push_back(Remove<Id>{id(line)});
        return batch.edits.size() == 1 ? batch.edits.front() : Edit(std::move(batch));
    }
    std::optional<Edit> moving(int line, int to) const override { return Edit(Move<Id>{id(line), to}); }
};

} // namespace stemwright
