#include <QCoreApplication>
#include <QDirIterator>
#include <QFile>
#include <QRegularExpression>

#include <gtest/gtest.h>

namespace {

TEST(Plurals, OneLeafAndTwoLeaves) {
    EXPECT_EQ(QCoreApplication::translate("stemwright::MainWindow", "%n leaf/leaves", nullptr, 1),
              QStringLiteral("1 leaf"));
    EXPECT_EQ(QCoreApplication::translate("stemwright::MainWindow", "%n leaf/leaves", nullptr, 2),
              QStringLiteral("2 leaves"));
}

// A counted word that was added without its plural would read "1 leaf/leaves".
TEST(Plurals, EveryCountedWordHasItsForms) {
    QFile forms(QStringLiteral(STEMWRIGHT_SOURCE_DIR "/resources/translations/stemwright_en.ts"));
    ASSERT_TRUE(forms.open(QIODevice::ReadOnly));
    const QString known = QString::fromUtf8(forms.readAll());
    EXPECT_FALSE(known.contains(QStringLiteral("unfinished")));
    const QRegularExpression counted(QStringLiteral(R"re(tr\(\s*"([^"]*%n[^"]*)")re"));
    int found = 0;
    for (QDirIterator it(QStringLiteral(STEMWRIGHT_SOURCE_DIR "/app"), {QStringLiteral("*.cpp")}, QDir::Files,
                         QDirIterator::Subdirectories);
         it.hasNext();) {
        QFile file(it.next());
        ASSERT_TRUE(file.open(QIODevice::ReadOnly));
        const QString source = QString::fromUtf8(file.readAll());
        for (auto match = counted.globalMatch(source); match.hasNext();) {
            const QString words = match.next().captured(1).toHtmlEscaped();
            ++found;
            EXPECT_TRUE(known.contains(QStringLiteral("<source>%1</source>").arg(words)))
                << file.fileName().toStdString() << ": " << words.toStdString();
        }
    }
    EXPECT_GE(found, 5);
}

} // namespace
