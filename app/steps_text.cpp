#include "app/steps_text.h"

#include "app/sheet_words.h"
#include "app/wording.h"
#include "core/document/bench.h"
#include "core/document/step_text.h"
#include "core/document/words.h"

#include <QCoreApplication>

#include <nlohmann/json.hpp>

#include <cmath>
#include <vector>

namespace stemwright {

namespace {

QString tr(const char* source) {
    return QCoreApplication::translate("Steps", source);
}

std::vector<std::size_t> placesOf(const Plan& plan, std::optional<std::size_t> stem) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < plan.stems.size(); ++i)
        if (!stem || *stem == i)
            out.push_back(i);
    return out;
}

/// The word of a step in JSON: the field's own, not a person's.
const char* codeOf(BindingStepCode code) {
    switch (code) {
    case BindingStepCode::cut:
        return "cut";
    case BindingStepCode::begin:
        return "begin";
    case BindingStepCode::tier:
        return "tier";
    case BindingStepCode::stake:
        return "stake";
    case BindingStepCode::tail:
        return "tail";
    case BindingStepCode::finish:
        return "finish";
    case BindingStepCode::cover:
        return "cover";
    }
    return "";
}

/// Whole micrometres: nobody binds closer, and the numbers stay readable.
double inJson(Length length) {
    return std::round(inMillimetres(length) * 1000) / 1000;
}

nlohmann::ordered_json leavesJson(const Plan& plan, const Tier& tier) {
    nlohmann::ordered_json out = nlohmann::ordered_json::array();
    static const char* const sides[] = {"left", "front", "right", "back"};
    for (std::size_t s = 0; s < tier.slots.size(); ++s) {
        const Angle turn = slotTurn(tier, s);
        nlohmann::ordered_json leaf{{"side", sides[static_cast<std::size_t>(sideOf(turn))]},
                                    {"turn_deg", inDegrees(turn)}};
        const Kind* kind = find(plan, tier.slots[s].leaf.kind);
        const Mix* mix = find(plan, tier.slots[s].leaf.mix);
        leaf["kind"] = kind ? nlohmann::ordered_json(kind->name) : nlohmann::ordered_json();
        leaf["mix"] = mix ? nlohmann::ordered_json(mix->name) : nlohmann::ordered_json();
        leaf["code"] = mix ? nlohmann::ordered_json(mix->code) : nlohmann::ordered_json();
        out.push_back(std::move(leaf));
    }
    return out;
}

} // namespace

QString stepsText(const Plan& plan, const Figures& figures, std::optional<std::size_t> only) {
    const TranslatedWords words(plan.units);
    QString out;
    for (const std::size_t place : placesOf(plan, only)) {
        const Stem& stem = plan.stems[place];
        const std::vector<BindingStep> steps = bindingSteps(plan, stem);
        const std::size_t now = stepNow(stem, steps);
        if (!out.isEmpty())
            out += QLatin1Char('\n');
        out += tr("%1. %2: %3 of %4 steps done\n")
                   .arg(place + 1)
                   .arg(lineText(stem.name))
                   .arg(now)
                   .arg(steps.size());
        if (steps.empty())
            out += QStringLiteral("   ") + text(words.word(SheetWord::cardNothing, {})) + QLatin1Char('\n');
        for (std::size_t i = 0; i < steps.size(); ++i) {
            out += QStringLiteral("%1 %2. %3")
                       .arg(i < now ? QStringLiteral("  [x]") : QStringLiteral("  [ ]"))
                       .arg(i + 1, 2)
                       .arg(text(stepText(plan, stem, figures.stems[place], steps[i], words)).simplified());
            if (steps[i].along > Length{})
                out += QLatin1Char(' ') + tr("Wrap %1.").arg(sizeText(steps[i].along, plan.units));
            const std::vector<WrapFigures>& wraps = figures.stems[place].wraps;
            if (steps[i].wrap < wraps.size() && steps[i].code != BindingStepCode::cut &&
                steps[i].code != BindingStepCode::stake && wraps[steps[i].wrap].toCut > Length{} &&
                !(tookOf(stem, steps[i].wrap) > Length{}))
                out += QLatin1Char(' ') +
                       tr("(%1 used, %2 left)")
                           .arg(cutText(steps[i].used[steps[i].wrap], plan.units),
                                cutText(wraps[steps[i].wrap].toCut - steps[i].used[steps[i].wrap], plan.units));
            out += QLatin1Char('\n');
        }
    }
    if (plan.stems.empty())
        out = text(words.word(SheetWord::noStems, {})) + QLatin1Char('\n');
    return out;
}

std::string stepsJson(const Plan& plan, const Figures& figures, std::optional<std::size_t> only) {
    const TranslatedWords words(plan.units);
    nlohmann::ordered_json stems = nlohmann::ordered_json::array();
    for (const std::size_t place : placesOf(plan, only)) {
        const Stem& stem = plan.stems[place];
        const std::vector<BindingStep> steps = bindingSteps(plan, stem);
        const std::size_t now = stepNow(stem, steps);
        nlohmann::ordered_json wraps = nlohmann::ordered_json::array();
        for (std::size_t w = 0; w < figures.stems[place].wraps.size(); ++w) {
            wraps.push_back({{"with", wordFor(plan.binding.wraps[w].with)},
                             {"to_cut_mm", inJson(figures.stems[place].wraps[w].toCut)},
                             {"used_mm", inJson(figures.stems[place].wraps[w].used)}});
            if (const Length took = tookOf(stem, w); took > Length{})
                wraps.back()["really_used_mm"] = inJson(took);
        }
        nlohmann::ordered_json list = nlohmann::ordered_json::array();
        for (std::size_t i = 0; i < steps.size(); ++i) {
            const BindingStep& step = steps[i];
            nlohmann::ordered_json one{{"step", i + 1},
                                       {"code", codeOf(step.code)},
                                       {"done", i < now},
                                       {"text", text(stepText(plan, stem, figures.stems[place], step, words))
                                                    .replace(QChar::Nbsp, QLatin1Char(' '))
                                                    .toStdString()}};
            if (step.code == BindingStepCode::tier) {
                const Tier& tier = stem.tiers[static_cast<std::size_t>(step.tier)];
                one["tier"] = step.tier + 1;
                one["turn_before_deg"] = inDegrees(step.turn);
                one["leaves"] = leavesJson(plan, tier);
            }
            one["wrap_mm"] = inJson(step.along);
            one["layer"] = step.wrap + 1;
            nlohmann::ordered_json used = nlohmann::ordered_json::array();
            for (const Length length : step.used)
                used.push_back(inJson(length));
            one["used_mm"] = std::move(used);
            list.push_back(std::move(one));
        }
        stems.push_back({{"stem", place + 1},
                         {"name", stem.name},
                         {"done", now == steps.size()},
                         {"steps_done", now},
                         {"layers", std::move(wraps)},
                         {"steps", std::move(list)}});
    }
    return nlohmann::ordered_json{{"stems", std::move(stems)}}.dump(2) + '\n';
}

} // namespace stemwright
