// The quotes: the accepted ones with every line, answer and signature, others that were offered a line each. What was
// only drafted never left the shop and is not in it.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/quote/answer.h"
#include "core/quote/exact.h"
#include "core/quote/extent.h"
#include "core/report/parts.h"
#include "core/report/say.h"
#include "core/report/table.h"

namespace cotter {

namespace {

std::string range(std::int64_t low, std::int64_t high) {
    return low == high ? money_text(low) : fmt::format("{}–{}", money_text(low), money_text(high));
}

std::string title_of(const Quote& quote) {
    return quote.version > 1 ? fmt::format("{}, version {}", quote.name, quote.version) : quote.name;
}

bool left_the_shop(const Quote& quote) {
    return quote.state != QuoteState::drafted;
}

bool accepted(const Job& job, const Quote& quote) {
    if (quote.state == QuoteState::changed) return false;
    for (const LineAnswer& answer : answers_to(job, quote))
        if (answer.accepted()) return true;
    return false;
}

std::string said(const Decision* decision) {
    if (decision == nullptr) return "not answered";
    return joined({capital(name_of(decision->said)), decision->note}, ": ");
}

void draw_lines(Writing& w, const Quote& quote) {
    Table table({{"Line", 0.4}, {"What, and how it comes about", 3.4}, {quote.currency, 1.05}, {"Answer", 1.3}});
    for (const LineAnswer& answer : answers_to(w.job, quote)) {
        const QuoteLine& line = *answer.line;
        const bool core = line.kind == LineKind::core;
        const std::string price = range(line.low, line.high) + (core ? "\ndeposit" : "");
        table.add({std::to_string(line.number), joined({line.text, line.basis}, "\n"), Cell::bold(price),
                   core && answer.decision == nullptr ? "needs none" : said(answer.decision)});
    }
    for (const QuoteTax& tax : quote.taxes)
        table.add({"",
                   fmt::format("{} {} % on {}", tax.name.empty() ? "Tax" : tax.name, tax.percent.text(),
                               range(tax.on_low, tax.on_high)),
                   Cell::bold(range(tax.low, tax.high)), ""});
    table.add({"", Cell::bold("Total of all lines, deposits apart"),
               Cell::bold(range(quote.total_low, quote.total_high)), ""});
    if (const auto total = accepted_total(w.job, quote))
        table.add({"", Cell::bold("Total of what was accepted, with its taxes"),
                   Cell::bold(range(total->low, total->high)), ""});
    table.draw(w.sheet);
}

std::string leftovers_of(const Quote& quote) {
    std::string out;
    for (const Leftover& left : quote.leftovers)
        out += fmt::format("{}{} of {}, for {}", out.empty() ? "" : "; ", extent_text(left.extent), left.item,
                           name_of(left.to));
    return out;
}

std::string all_of(const std::vector<std::string>& parts) {
    std::string out;
    for (const std::string& part : parts) out += (out.empty() ? "" : "; ") + part;
    return out;
}

void draw_signature(Writing& w, const Decision& decision) {
    constexpr double kWide = 190, kHigh = 56;
    w.sheet.need(kHigh + 22);
    const double left = w.sheet.left(), top = w.sheet.y();
    Canvas& canvas = w.sheet.canvas();
    const std::array<Spot, 4> frame{Spot{left, top}, Spot{left + kWide, top}, Spot{left + kWide, top + kHigh},
                                    Spot{left, top + kHigh}};
    canvas.polygon(frame, {}, kRule, 0.6);
    const auto spot = [&](const TagPoint& p) { return Spot{left + p.x * kWide, top + p.y * kHigh}; };
    for (const PenStroke& stroke : decision.signature)
        for (std::size_t i = 0; i < stroke.points.size(); ++i)
            canvas.line(spot(stroke.points[i == 0 ? 0 : i - 1]), spot(stroke.points[i]), 1.2);
    w.sheet.gap(kHigh + 3);
    w.sheet.paragraph(fmt::format("Drawn by {} on the device, {}", decision.name, w.time(decision.at)), kSmall);
}

// Each signature once, though it stands under the accepted and the declined lines.
void draw_answers(Writing& w, const Quote& quote) {
    std::vector<const Decision*> seen;
    for (const Decision& d : w.job.all<Decision>()) {
        if (d.quote != quote.id) continue;
        std::string lines;
        for (const int line : d.lines) lines += fmt::format("{}{}", lines.empty() ? "" : ", ", line);
        w.sheet.paragraph(fmt::format("{} {}: {} by {}, {}, {}, taken down by {}.{}",
                                      d.lines.size() == 1 ? "Line" : "Lines", lines, name_of(d.said), d.name,
                                      name_of(d.channel), w.time(d.at), d.by,
                                      d.note.empty() ? "" : " “" + d.note + "”"));
        bool drawn = d.signature.empty();
        for (const Decision* other : seen) drawn = drawn || (other->signature == d.signature && other->at == d.at);
        if (!drawn) seen.push_back(&d);
    }
    for (const Decision* d : seen) draw_signature(w, *d);
}

void draw_accepted(Writing& w, const Quote& quote) {
    w.sheet.heading("Accepted: " + title_of(quote), 90);
    w.sheet.labelled({
        {"Offered", quote.offered_at ? w.time(*quote.offered_at) : ""},
        {"Valid until", quote.expires ? quote.expires->text() : ""},
        {"High when", quote.high_because},
        {"Not to exceed", quote.not_to_exceed ? money_text(*quote.not_to_exceed) + " " + quote.currency : ""},
        {"Deposits", quote.cores > 0 ? money_text(quote.cores) + " " + quote.currency +
                                           ", beside the total, given back with the old parts"
                                     : ""},
        {"Left over", leftovers_of(quote)},
        {"Missing", all_of(quote.missing)},
        {"Fingerprint", quote.fingerprint},
    });
    draw_lines(w, quote);
    draw_answers(w, quote);
}

}  // namespace

void draw_quotes(Writing& w) {
    const auto& quotes = w.job.all<Quote>();
    if (std::none_of(quotes.begin(), quotes.end(), left_the_shop)) return;
    w.sheet.start_page();
    w.sheet.part("Quotes");
    Table others({{"Quote", 2}, {"State", 1.2}, {"Total, deposits apart", 1.8}, {"Parts", 1.4}});
    for (const Quote& quote : quotes) {
        if (accepted(w.job, quote)) {
            draw_accepted(w, quote);
            continue;
        }
        if (!left_the_shop(quote)) continue;
        others.add({title_of(quote), capital(name_of(standing(w.job, quote, w.in.at.local_date()))),
                    range(quote.total_low, quote.total_high) + " " + quote.currency,
                    quote.ready_days == 0
                        ? std::string("at once")
                        : fmt::format("after {}", count_text(static_cast<std::size_t>(quote.ready_days), "day"))});
    }
    others.draw(w.sheet, "Also offered");
}

}  // namespace cotter
