#include "app/sheet_painter.h"
#include "app/sheet_words.h"
#include "app/wording.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QDate>
#include <QDir>
#include <QPainter>
#include <QPdfWriter>
#include <QSaveFile>
#include <QSvgGenerator>

#include <memory>

namespace stemwright {

namespace {

constexpr int pdfDpi = 2540; ///< a hundredth of a millimetre, as the painter's units
constexpr int svgDpi = 254;  ///< a tenth, a whole number, so that sizes stay exact

QString tr(const char* source) {
    return QCoreApplication::translate("Sheets", source);
}

bool fail(QString* why, const QString& sentence) {
    if (why)
        *why = sentence;
    return false;
}

bool stopped(const PageTold& told, std::size_t page, std::size_t pages) {
    return told && !told(static_cast<int>(page) + 1, static_cast<int>(pages));
}

QPageLayout layoutOf(const Page& page) {
    // Exact sizes by name where Qt knows them; margins are the page's own.
    const QPageSize size(
        QSizeF(page.landscape ? page.height : page.width, page.landscape ? page.width : page.height),
        QPageSize::Millimeter, QString(), QPageSize::FuzzyMatch);
    return QPageLayout(size, page.landscape ? QPageLayout::Landscape : QPageLayout::Portrait,
                       QMarginsF(0, 0, 0, 0), QPageLayout::Millimeter, QMarginsF(0, 0, 0, 0));
}

/// The plan gives the date, so that the same plan gives the same bytes: overwritten in place, at equal length.
void setCreationDate(QByteArray& pdf, const std::string& date) {
    static const QByteArray key("/CreationDate (D:");
    const qsizetype at = pdf.indexOf(key);
    if (at < 0)
        return;
    QDate day = QDate::fromString(text(date), Qt::ISODate);
    if (!day.isValid())
        day = QDate(2000, 1, 1);
    const qsizetype from = at + key.size(), end = pdf.indexOf(')', from);
    QByteArray stamp = day.toString(QStringLiteral("yyyyMMdd")).toLatin1() + "000000";
    const QByteArray zone("+00'00'");
    // Qt ends it with Z or with a zone, by the computer's clock.
    if (end - from == stamp.size() + zone.size())
        stamp += zone;
    else
        stamp = stamp.leftJustified(end - from, 'Z', true);
    pdf.replace(from, end - from, stamp);
}

bool save(const QString& file, const QByteArray& bytes, QString* why) {
    QSaveFile out(file);
    if (!out.open(QIODevice::WriteOnly) || out.write(bytes) != bytes.size() || !out.commit())
        return fail(why,
                    tr("%1 cannot be written: %2.").arg(QDir::toNativeSeparators(file), out.errorString()));
    return true;
}

QString pageName(const Page& page) {
    switch (page.what) {
    case SheetPage::glance:
        return QStringLiteral("glance");
    case SheetPage::mats:
        return QStringLiteral("mats");
    case SheetPage::cards:
        return QStringLiteral("cards");
    case SheetPage::leaves:
        return QStringLiteral("leaves");
    case SheetPage::supplies:
        return QStringLiteral("supplies");
    case SheetPage::pot:
        return QStringLiteral("pot");
    }
    return {};
}

QByteArray svgOf(const Page& page, const Plan& plan, bool grey) {
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    QSvgGenerator svg;
    svg.setOutputDevice(&buffer);
    svg.setResolution(svgDpi);
    const QSize size(qRound(page.width * svgDpi / 25.4), qRound(page.height * svgDpi / 25.4));
    svg.setSize(size);
    svg.setViewBox(QRect(QPoint(), size));
    svg.setTitle(text(plan.about.title));
    QPainter painter(&svg);
    paintPage(painter, page, plan, svgDpi / 25.4, grey);
    painter.end();
    return bytes;
}

} // namespace

bool writePdf(const Plan& plan, const SheetOptions& options, const QString& file, QString* why,
              const PageTold& told) {
    return writePdf(plan, pagesOf(plan, figures(plan), options), options.grey, file, why, told);
}

bool writePdf(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& file, QString* why,
              const PageTold& told) {
    if (pages.empty())
        return fail(why, tr("There is nothing to put on paper: none of the chosen pages has anything on it."));
    QByteArray bytes;
    QBuffer buffer(&bytes);
    buffer.open(QIODevice::WriteOnly);
    {
        QPdfWriter pdf(&buffer);
        pdf.setResolution(pdfDpi);
        pdf.setTitle(text(plan.about.title));
        pdf.setCreator(QStringLiteral("Stemwright"));
        pdf.setPageLayout(layoutOf(pages.front()));
        QPainter painter(&pdf);
        for (std::size_t i = 0; i < pages.size(); ++i) {
            if (i > 0) {
                pdf.setPageLayout(layoutOf(pages[i]));
                pdf.newPage();
            }
            paintPage(painter, pages[i], plan, pdfDpi / 25.4, grey);
            if (stopped(told, i, pages.size()))
                return fail(why, {});
        }
    }
    setCreationDate(bytes, plan.about.date);
    return save(file, bytes, why);
}

bool writeSvg(const Plan& plan, const SheetOptions& options, const QString& folder, QString* why,
              QStringList* written, const PageTold& told) {
    return writeSvg(plan, pagesOf(plan, figures(plan), options), options.grey, folder, why, written, told);
}

bool writeSvg(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& folder, QString* why,
              QStringList* written, const PageTold& told) {
    if (pages.empty())
        return fail(why, tr("There is nothing to put on paper: none of the chosen pages has anything on it."));
    if (!QDir().mkpath(folder))
        return fail(why, tr("The folder %1 cannot be made.").arg(QDir::toNativeSeparators(folder)));
    std::vector<std::unique_ptr<QSaveFile>> files;
    QStringList names;
    for (std::size_t i = 0; i < pages.size(); ++i) {
        const QString name = QDir(folder).filePath(
            QStringLiteral("%1-%2.svg").arg(i + 1, 2, 10, QLatin1Char('0')).arg(pageName(pages[i])));
        const QByteArray bytes = svgOf(pages[i], plan, grey);
        auto out = std::make_unique<QSaveFile>(name);
        if (!out->open(QIODevice::WriteOnly) || out->write(bytes) != bytes.size() || !out->flush())
            return fail(
                why, tr("%1 cannot be written: %2.").arg(QDir::toNativeSeparators(name), out->errorString()));
        files.push_back(std::move(out));
        names << name;
        if (stopped(told, i, pages.size()))
            return fail(why, {});
    }
    for (const auto& out : files)
        if (!out->commit())
            return fail(why, tr("%1 cannot be written: %2.")
                                 .arg(QDir::toNativeSeparators(out->fileName()), out->errorString()));
    if (written)
        *written = names;
    return true;
}

bool writeSvgFile(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& file,
                  QString* why) {
    if (pages.empty())
        return fail(why, tr("There is nothing to put on paper: none of the chosen pages has anything on it."));
    if (pages.size() > 1)
        return fail(why,
                    tr("An SVG holds one page, and these are %1: choose one with --only and --stems, or give "
                       "a folder that ends in / for a file a page.")
                        .arg(pages.size()));
    return save(file, svgOf(pages.front(), plan, grey), why);
}

} // namespace stemwright
