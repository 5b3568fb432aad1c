#include "app/missing_glyphs.h"

#include "app/sheet_words.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QFontMetricsF>
#include <QStringList>

#include <set>
#include <unordered_set>

namespace stemwright {

namespace {

constexpr qsizetype mostNamed = 8;

QString tr(const char* source, const char* note = nullptr) {
    return QCoreApplication::translate("Sheets", source, note);
}

bool drawn(char32_t character) {
    switch (QChar::category(character)) {
    case QChar::Other_Control:
    case QChar::Other_Format:
    case QChar::Separator_Line:
    case QChar::Separator_Paragraph:
    case QChar::Separator_Space:
        return false;
    default:
        // Choosers between forms of the letter before them.
        return !(character >= 0xfe00 && character <= 0xfe0f) && !(character >= 0xe0100 && character <= 0xe01ef);
    }
}

} // namespace

QString missingGlyphs(const std::vector<Page>& pages) {
    const QFontMetricsF metrics(sheetFont({8, false}));
    std::unordered_set<std::string> seen;
    std::set<char32_t> asked;
    QStringList missing;
    for (const Page& page : pages)
        for (const Mark& mark : page.marks) {
            const auto* said = std::get_if<TextMark>(&mark);
            if (!said || !seen.insert(said->text).second)
                continue;
            for (const char32_t character : text(said->text).toUcs4())
                if (character > 0x7e && asked.insert(character).second && drawn(character) &&
                    !metrics.inFontUcs4(character))
                    missing << tr("%1 (U+%2)", "a character, its number in Unicode")
                                   .arg(QString::fromUcs4(&character, 1))
                                   .arg(QString::number(static_cast<uint>(character), 16).toUpper());
        }
    if (missing.isEmpty())
        return {};
    const qsizetype more = missing.size() - mostNamed;
    const QString list = QStringList(missing.mid(0, mostNamed)).join(QStringLiteral(", "));
    return more > 0
               ? tr("No installed font has these characters, and they are printed as boxes: %1, and %2 more.")
                     .arg(list)
                     .arg(more)
               : tr("No installed font has these characters, and they are printed as boxes: %1.").arg(list);
}

} // namespace stemwright
