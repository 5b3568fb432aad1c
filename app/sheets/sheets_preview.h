#pragma once

#include "core/document/sheet.h"

#include <QAbstractScrollArea>
#include <QFutureWatcher>
#include <QHash>
#include <QImage>

#include <memory>
#include <vector>

namespace stemwright {

/// Pages ready to be painted, with the plan that they were made from.
struct SheetSet {
    Plan plan;
    SheetOptions options;
    std::vector<Page> pages;
    QString missing{}; ///< a sentence on what no font can write
};

/// The pages one below the other, as they print. Each is painted by the paper's painter away from the window's
/// thread when it comes into sight, those beside it afterwards.
class SheetsPreview : public QAbstractScrollArea {
    Q_OBJECT
public:
    explicit SheetsPreview(QWidget* parent = nullptr);
    ~SheetsPreview() override;

    void show(std::shared_ptr<const SheetSet> sheets);
    const SheetSet* sheets() const { return sheets_.get(); }
    /// Where no page can be shown yet, it says that they are being made.
    void setMaking(bool making);
    bool making() const { return making_; }
    static QString makingWords();

    /// 1 is the size on paper, by the screen's own measure of itself; 0 makes each page as wide as the
    /// window.
    void setZoom(double zoom);
    double zoom() const { return zoom_; }
    void step(int steps);

    int currentPage() const;
    void goTo(int page);
    /// Whether the page is painted at its present size; for tests.
    bool ready(int page) const;

    QSize sizeHint() const override;

Q_SIGNALS:
    void zoomed();
    void pageChanged(int page, int pages);

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void scrollContentsBy(int dx, int dy) override;
    void keyPressEvent(QKeyEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;

private:
    double pixelsPerMm(std::size_t page) const;
    QRect placeOf(std::size_t page) const; ///< in the whole of the pages
    void layOut();
    void ask();
    void keep(int page, double scale, const QImage& picture);

    struct Painted {
        int page = 0;
        double scale = 0;
        QImage picture;
    };

    std::shared_ptr<const SheetSet> sheets_;
    std::vector<int> tops_;
    int width_ = 0;
    int height_ = 0;
    double zoom_ = 0;
    QHash<int, Painted> pictures_;
    QFutureWatcher<Painted> painting_;
    int told_ = -1;
    bool making_ = false;
};

} // namespace stemwright
