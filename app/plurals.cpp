#include "app/plurals.h"

#include <QCoreApplication>
#include <QTranslator>

namespace stemwright {

void installPlurals() {
    auto* translator = new QTranslator(qApp);
    if (translator->load(QStringLiteral(":/translations/stemwright_en.qm")))
        QCoreApplication::installTranslator(translator);
}

} // namespace stemwright
