#pragma once

#include "app/bind/bind_place.h"

#include "app/ask.h"
#include "app/file_store.h"
#include "app/main_window.h"
#include "app/session.h"
#include "app/settings.h"
#include "tests/support/boards.h"

#include <QLabel>
#include <QMenuBar>
#include <QTemporaryDir>
#include <QTest>

#include <gtest/gtest.h>

namespace stemwright {

/// The whole window on a plan with a file of its own, in the place Bind.
class BindPlaceTest : public ::testing::Test {
protected:
    BindPlaceTest() : file(folder.filePath(QStringLiteral("plan.stemplan"))), window(wrapped()) {
        ask::Stand stand;
        stand.answer = [this](const QString& question) {
            asked << question;
            return answer;
        };
        stand.told = [this](const QString& sentence) { asked << sentence; };
        stand.file = [this] { return file; };
        ask::setStand(stand);
        settings::setBindAsHeld(false);
        settings::setBindTimed(false);
        EXPECT_TRUE(window.save());
        window.resize(1280, 800);
        window.show();
        window.showPlaceNamed(QStringLiteral("bind"));
        EXPECT_TRUE(QTest::qWaitForWindowExposed(&window));
        place = window.findChild<BindPlace*>();
        EXPECT_TRUE(place);
        place->setFocus();
    }
    ~BindPlaceTest() override { ask::setStand(std::nullopt); }

    static Plan wrapped() {
        Plan plan = test::smallBoard();
        plan.binding.wraps = {Wrap{}};
        return plan;
    }
    Session& session() { return window.session(); }
    const Stem& stem(std::size_t at) { return session().plan().stems[at]; }
    QString said(const char* name) {
        auto* label = window.findChild<QLabel*>(QLatin1String(name));
        EXPECT_TRUE(label) << name;
        // Figures keep to their units by no-break spaces.
        return label && label->isVisible() ? label->text().replace(QChar::Nbsp, QLatin1Char(' ')) : QString();
    }
    template <class T> T* child(const char* name) {
        T* found = window.findChild<T*>(QLatin1String(name));
        EXPECT_TRUE(found) << name;
        return found;
    }
    void key(Qt::Key key) { QTest::keyClick(place, key); }
    Plan onDisk() {
        QString why;
        const std::optional<Plan> plan = readPlan(file, &why);
        EXPECT_TRUE(plan) << why.toStdString();
        return plan.value_or(Plan{});
    }
    std::size_t boundTiers() {
        return static_cast<std::size_t>(std::count_if(stem(0).tiers.begin(), stem(0).tiers.end(),
                                                      [](const Tier& t) { return t.progress.bound; }));
    }

    QTemporaryDir folder;
    QString file;
    ask::Answer answer = ask::Answer::cancel;
    QStringList asked;
    MainWindow window;
    BindPlace* place = nullptr;
};

} // namespace stemwright
