#include "app/look.h"

#include <QAbstractItemView>
#include <QApplication>
#include <QComboBox>
#include <QPushButton>
#include <QtTest>

#include <gtest/gtest.h>

namespace stemwright {
namespace {

// Every list of choices in the program opens by the same style; none cuts its last line.

TEST(StyleSheet, AListOfChoicesShowsAllItsLinesWhole) {
    for (const double times : {1.0, 1.5})
        for (const int count : {2, 7, 9, 10, 14}) {
            QWidget window;
            window.resize(600, 500);
            QComboBox box(&window);
            QFont font = QApplication::font();
            font.setPointSizeF(font.pointSizeF() * times);
            box.setFont(font);
            box.setGeometry(20, 20, 240, 44);
            for (int i = 0; i < count; ++i)
                box.addItem(QStringLiteral("Stem %1: not begun").arg(i + 1));
            window.show();
            ASSERT_TRUE(QTest::qWaitForWindowExposed(&window));
            box.setFocus();
            QTest::keyClick(&box, Qt::Key_Down, Qt::AltModifier); // opens the list
            QAbstractItemView* list = box.view();
            ASSERT_TRUE(QTest::qWaitFor([&] { return list->isVisible(); }));
            QTest::qWait(1);
            const int last = std::min(count, box.maxVisibleItems()) - 1;
            const QRect line = list->visualRect(list->model()->index(last, 0));
            EXPECT_GE(line.top(), 0);
            EXPECT_GE(line.height(), look::target);
            EXPECT_LE(line.bottom(), list->viewport()->height() - 1) << count << " lines, " << times;
            QTest::keyClick(list, Qt::Key_Escape);
        }
}

TEST(StyleSheet, WhatCannotBePressedDoesNotLookAsIfItCould) {
    const auto ground = [](QPushButton& button) {
        button.resize(160, 40);
        return button.grab().toImage().pixelColor(16, 20);
    };
    for (const char* sort : {"", "main", "small", "tall", "large", "default"}) {
        QWidget window;
        QPushButton button(&window);
        if (*sort)
            button.setProperty(sort, true);
        button.setDefault(QLatin1String(sort) == QLatin1String("default"));
        button.ensurePolished();
        button.setEnabled(false);
        EXPECT_EQ(ground(button), look::card) << sort;
        if (QLatin1String(sort) == QLatin1String("main")) {
            button.setEnabled(true);
            EXPECT_EQ(ground(button), look::accent);
        }
    }
}

} // namespace
} // namespace stemwright
