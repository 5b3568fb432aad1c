// Blocks of cells as tab-separated text: cellsOf() and textOf() of grid_view.h.
#include "app/leaves/grid_view.h"

namespace stemwright {

QList<QStringList> cellsOf(const QString& text) {
    QList<QStringList> rows;
    QStringList row;
    QString cell;
    bool quoted = false, begun = false;
    const auto endRow = [&] {
        row += cell;
        rows += row;
        row.clear();
        cell.clear();
        begun = false;
    };
    for (qsizetype i = 0; i < text.size(); ++i) {
        const QChar c = text[i];
        if (quoted) {
            if (c != QLatin1Char('"'))
                cell += c;
            else if (i + 1 < text.size() && text[i + 1] == QLatin1Char('"'))
                cell += text[++i];
            else
                quoted = false;
        } else if (c == QLatin1Char('"') && !begun) {
            // An inch mark opens no quotation: only a quote that is closed before a tab or line end does.
            const qsizetype close = text.indexOf(QLatin1Char('"'), i + 1);
            quoted = close > 0;
            if (!quoted)
                cell += c;
            begun = true;
        } else if (c == QLatin1Char('\t')) {
            row += cell;
            cell.clear();
            begun = false;
        } else if (c == QLatin1Char('\n') || c == QLatin1Char('\r')) {
            if (c == QLatin1Char('\r') && i + 1 < text.size() && text[i + 1] == QLatin1Char('\n'))
                ++i;
            endRow();
        } else {
            cell += c;
            begun = true;
        }
    }
    if (begun || !cell.isEmpty() || !row.isEmpty())
        endRow();
    while (!rows.isEmpty() && rows.back().size() == 1 && rows.back().front().trimmed().isEmpty())
        rows.removeLast();
    return rows;
}

QString textOf(const QList<QStringList>& cells) {
    QString out;
    for (const QStringList& row : cells) {
        QStringList quoted;
        for (QString cell : row) {
            const bool special = cell.contains(QLatin1Char('\t')) || cell.contains(QLatin1Char('\n')) ||
                                 cell.startsWith(QLatin1Char('"'));
            if (special)
                cell = QLatin1Char('"') + cell.replace(QLatin1String("\""), QLatin1String("\"\"")) +
                       QLatin1Char('"');
            quoted += cell;
        }
        out += quoted.join(QLatin1Char('\t')) + QLatin1Char('\n');
    }
    return out;
}

} // namespace stemwright
