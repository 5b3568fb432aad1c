#include "app/look.h"

#include "core/document/sheet.h"

#include "app/style_sheet.h"

#include <QApplication>
#include <QFontDatabase>
#include <QPalette>
#include <QStyleFactory>

#include <cmath>

namespace stemwright::look {

QColor printed(Ink ink_) {
    switch (ink_) {
    case Ink::black:
        return {28, 26, 24};
    case Ink::quiet:
        return {92, 86, 77};
    case Ink::hair:
        return {186, 179, 165};
    case Ink::accent:
        return accent;
    case Ink::wire:
        return {216, 204, 176};
    case Ink::wireEdge:
        return {122, 107, 70};
    case Ink::wash:
        return {245, 242, 234};
    case Ink::paper:
        return {255, 255, 255};
    }
    return ink;
}

QString family() {
    static const QString chosen = [] {
        const QStringList there = QFontDatabase::families();
        for (const QString& wanted :
             {QStringLiteral("Inter"), QStringLiteral("Noto Sans"), QStringLiteral("DejaVu Sans")})
            if (there.contains(wanted))
                return wanted;
        return QFont().family();
    }();
    return chosen;
}

QFont font(Type type) {
    QFont font(family());
    const double base = 9.75;
    switch (type) {
    case Type::small:
        font.setPointSizeF(base * 0.92);
        break;
    case Type::text:
        font.setPointSizeF(base);
        break;
    case Type::strong:
        font.setPointSizeF(base);
        font.setWeight(QFont::DemiBold);
        break;
    case Type::heading:
        font.setPointSizeF(base * 1.08);
        font.setWeight(QFont::DemiBold);
        break;
    case Type::title:
        font.setPointSizeF(base * 1.3);
        font.setWeight(QFont::DemiBold);
        break;
    }
    return font;
}

QColor inkOn(const QColor& ground) {
    // Relative luminance of WCAG 2.2; 0.179 is where black and white reach the same contrast.
    const auto linear = [](double c) { return c <= 0.04045 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    const double luminance =
        0.2126 * linear(ground.redF()) + 0.7152 * linear(ground.greenF()) + 0.0722 * linear(ground.blueF());
    return luminance > 0.179 ? ink : paper;
}

void apply() {
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    QApplication::setFont(font(Type::text));
    QPalette palette;
    palette.setColor(QPalette::Window, paper);
    palette.setColor(QPalette::WindowText, ink);
    palette.setColor(QPalette::Base, card);
    palette.setColor(QPalette::AlternateBase, side);
    palette.setColor(QPalette::Text, ink);
    palette.setColor(QPalette::Button, bar);
    palette.setColor(QPalette::ButtonText, ink);
    palette.setColor(QPalette::Highlight, accent);
    palette.setColor(QPalette::HighlightedText, card);
    palette.setColor(QPalette::Link, accent);
    palette.setColor(QPalette::ToolTipBase, night);
    palette.setColor(QPalette::ToolTipText, onNight);
    palette.setColor(QPalette::PlaceholderText, quiet);
    palette.setColor(QPalette::Mid, line);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, faint);
    QApplication::setPalette(palette);
    qApp->setStyleSheet(styleSheet());
}

} // namespace stemwright::look
