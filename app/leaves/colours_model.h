#pragma once

#include "app/leaves/table_model.h"

#include <QColor>

namespace stemwright {

/// The plan's colours: name, value, and how many beads of each the stock takes.
class ColoursModel : public TableModel {
    Q_OBJECT
public:
    struct Field {
        enum { name, value, beads };
    };
    explicit ColoursModel(Session& session, QObject* parent = nullptr);

    ColourId colour(int line) const { return ColourId{key(line)}; }
    QColor shade(int line) const;

    int fields() const override { return 3; }
    QString fieldName(int field) const override;
    QString lineName(int line) const override;
    bool editable(int line, int field) const override;

protected:
    std::vector<std::uint32_t> keysOf(const Plan& plan) const override;
    QString shown(int line, int field) const override;
    QVariant more(int line, int field, int role) const override;
    QString write(Plan& draft, int line, int field, const QString& text) const override;
    QString addTo(Plan& draft) const override;
    std::optional<Edit> removal(const QList<int>& lines, QString& why) const override;
    std::optional<Edit> moving(int line, int to) const override;
};

} // namespace stemwright
