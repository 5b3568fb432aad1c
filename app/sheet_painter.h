#pragma once

#include "core/document/sheet.h"

#include <QStringList>

#include <functional>

class QImage;
class QPainter;
class QPrinter;
class QWidget;

namespace stemwright {

/// The pages of a plan in the program's words and fonts. From any thread, but one at a time.
std::vector<Page> pagesOf(const Plan& plan, const Figures& figures, const SheetOptions& options);

/// Paints a page, its upper left corner at the painter's origin and `unitsPerMm` of the painter's units to a
/// millimetre. The one painter of PDF, SVG, printer and preview. The ground is the paper's: it paints none.
void paintPage(QPainter& painter, const Page& page, const Plan& plan, double unitsPerMm, bool grey);

/// The page as a picture on white paper; for the preview, from any thread.
QImage pagePicture(const Page& page, const Plan& plan, double pixelsPerMm, bool grey);

/// Told after each page how many of all are done; where it gives false the writing stops and nothing is
/// written.
using PageTold = std::function<bool(int done, int all)>;

/// Writes all pages into one PDF. Whole or not at all; false with a sentence in `why` if it cannot be, or with
/// an empty one if it was stopped. The same plan gives the same bytes, provided that the program began with a
/// fixed hash seed.
bool writePdf(const Plan& plan, const SheetOptions& options, const QString& file, QString* why,
              const PageTold& told = {});
bool writePdf(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& file, QString* why,
              const PageTold& told = {});

/// Writes one SVG a page into the folder, which is made where it is missing: `01-glance.svg`, `02-mats.svg`, …
/// Nothing is written if one of them cannot be. `written` has their paths.
bool writeSvg(const Plan& plan, const SheetOptions& options, const QString& folder, QString* why,
              QStringList* written = nullptr, const PageTold& told = {});
bool writeSvg(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& folder, QString* why,
              QStringList* written = nullptr, const PageTold& told = {});
/// Writes the one page that there is; an SVG holds no more, so several are refused with a sentence.
bool writeSvgFile(const Plan& plan, const std::vector<Page>& pages, bool grey, const QString& file,
                  QString* why);

/// Asks for a printer and prints. False only if printing failed, with a sentence in `why`; true when the maker
/// thought better of it.
bool printSheets(const Plan& plan, const std::vector<Page>& pages, const SheetOptions& options, QWidget* parent,
                 QString* why);
/// Prints on that printer without asking.
bool printOn(QPrinter& printer, const Plan& plan, const std::vector<Page>& pages, const SheetOptions& options,
             QString* why);

} // namespace stemwright
