#include "app/sheet_painter.h"
#include "app/wording.h"

#include <QCoreApplication>
#include <QPainter>
#include <QPrintDialog>
#include <QPrinter>

namespace stemwright {

namespace {
QPageSize::PageSizeId sizeOf(Paper paper) {
    switch (paper) {
    case Paper::a4:
        return QPageSize::A4;
    case Paper::a3:
        return QPageSize::A3;
    case Paper::letter:
        return QPageSize::Letter;
    }
    return QPageSize::A4;
}
} // namespace

bool printSheets(const Plan& plan, const std::vector<Page>& pages, const SheetOptions& options, QWidget* parent,
                 QString* why) {
    QPrinter printer(QPrinter::HighResolution);
    printer.setPageSize(QPageSize(sizeOf(options.paper)));
    printer.setDocName(text(plan.about.title));
    QPrintDialog dialog(&printer, parent);
    dialog.setObjectName(QStringLiteral("printDialog"));
    dialog.setMinMax(1, static_cast<int>(pages.size()));
    dialog.setOption(QAbstractPrintDialog::PrintPageRange);
    if (dialog.exec() != QDialog::Accepted)
        return true;
    return printOn(printer, plan, pages, options, why);
}

bool printOn(QPrinter& printer, const Plan& plan, const std::vector<Page>& pages, const SheetOptions& options,
             QString* why) {
    // The whole sheet is ours and nothing is fitted or shifted: the pages have margins of their own.
    printer.setFullPage(true);
    printer.setPageSize(QPageSize(sizeOf(options.paper)));
    printer.setPageMargins(QMarginsF(0, 0, 0, 0));
    const std::size_t first = printer.fromPage() > 0 ? static_cast<std::size_t>(printer.fromPage() - 1) : 0;
    const std::size_t last = printer.toPage() > 0
                                 ? std::min(pages.size(), static_cast<std::size_t>(printer.toPage()))
                                 : pages.size();
    QPainter painter;
    for (std::size_t i = first; i < last; ++i) {
        printer.setPageOrientation(pages[i].landscape ? QPageLayout::Landscape : QPageLayout::Portrait);
        const bool ready = i == first ? painter.begin(&printer) : printer.newPage();
        if (!ready) {
            if (why)
                *why = QCoreApplication::translate("Sheets", "The printer %1 does not take the pages.")
                           .arg(printer.printerName());
            return false;
        }
        paintPage(painter, pages[i], plan, printer.resolution() / 25.4, options.grey);
    }
    return true;
}

} // namespace stemwright
