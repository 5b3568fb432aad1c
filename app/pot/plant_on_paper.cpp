#include "app/pot/plant_on_paper.h"

#include "app/pot/plant_render.h"

#include <QPainter>

namespace stemwright {

QImage plantOnPaper(const Plan& plan, const PlantMark& mark, double pixelsPerMm, bool grey) {
    const PlantScene scene(plan, grey ? ColourVision::grey : ColourVision::full);
    PlantPicture picture;
    picture.view = View(degrees(mark.turnDegrees), degrees(mark.tiltDegrees));
    picture.size =
        QSize(qMax(1, qRound(mark.box.width * pixelsPerMm)), qMax(1, qRound(mark.box.height * pixelsPerMm)));
    picture.framing = framed(scene, picture.view.tilt(), picture.size);
    picture.fineness = 2;
    QImage paper(picture.size, QImage::Format_RGB32);
    paper.fill(Qt::white);
    QPainter painter(&paper);
    painter.drawImage(0, 0, renderPlant(scene, picture));
    painter.end();
    return paper;
}

} // namespace stemwright
