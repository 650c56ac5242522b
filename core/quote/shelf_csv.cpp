// Offers as CSV: one table of columns serves both ways.
#include <algorithm>
#include <charconv>
#include <fmt/format.h>
#include <functional>
#include <map>

#include "core/base/money.h"
#include "core/base/text.h"
#include "core/quote/csv_text.h"
#include "core/quote/exact.h"
#include "core/quote/extent.h"
#include "core/quote/shelf.h"

namespace cotter {

namespace {

constexpr std::size_t kMostLines = 100'000;

// ---- values --------------------------------------------------------------------------------------------------

std::vector<std::string> split(std::string_view text) {
    std::vector<std::string> out;
    while (!text.empty()) {
        const auto end = std::min(text.find(';'), text.size());
        std::string_view part = text.substr(0, end);
        while (part.starts_with(' ')) part.remove_prefix(1);
        while (part.ends_with(' ')) part.remove_suffix(1);
        if (!part.empty()) out.emplace_back(part);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return out;
}

std::string joined(const std::vector<std::string>& list) {
    std::string out;
    for (const std::string& item : list) out += (out.empty() ? "" : "; ") + item;
    return out;
}

// "2 corners of brake pads", "946 mL of brake fluid"
Result<Cover> cover_from(const std::string& text) {
    const auto of = text.find(" of ");
    const auto blank = text.find(' ');
    if (of == std::string::npos || blank >= of)
        return fail(Errc::refused, fmt::format("'{}' is not like '2 corners of brake pads'", one_line(text, 60)));
    const std::string unit = text.substr(blank + 1, of - blank - 1);
    Cover cover{text.substr(of + 4), {}};
    COTTER_ASSIGN(cover.extent.amount.number, Number::parse(text.substr(0, blank)));
    if (unit == "corner" || unit == "corners") {
        cover.extent.basis = Basis::corners;
    } else if (unit == "piece" || unit == "pieces") {
        cover.extent.basis = Basis::pieces;
    } else {
        const Unit* known = find_unit(unit);
        if (known == nullptr || (known->quantity != Quantity::volume && known->quantity != Quantity::length))
            return fail(Errc::refused,
                        fmt::format("'{}' is neither corners, pieces, a volume nor a length", one_line(unit, 40)));
        cover.extent.amount.unit = unit;
        cover.extent.basis = known->quantity == Quantity::volume ? Basis::volume : Basis::length;
    }
    COTTER_ASSIGN(const std::int64_t units, units_of(cover.extent));
    if (units == 0) return fail(Errc::refused, "a pack covers something");
    return cover;
}

std::string cover_text(const Cover& cover) {
    const bool counts = cover.extent.basis == Basis::corners || cover.extent.basis == Basis::pieces;
    return fmt::format("{} {} of {}", cover.extent.amount.number.text(),
                       counts ? name_of(cover.extent.basis) : std::string_view(cover.extent.amount.unit), cover.item);
}

// ---- columns -------------------------------------------------------------------------------------------------

struct Column {
    std::string_view name;
    std::function<Result<>(Offer&, const std::string&)> read;
    std::function<std::string(const Offer&)> write;
};

Column text_column(std::string_view name, std::string Offer::*field, bool needed = false) {
    return {name,
            [=](Offer& offer, const std::string& text) -> Result<> {
                offer.*field = unguarded_text(text);
                if (needed && (offer.*field).empty()) return fail(Errc::refused, "it is empty");
                return {};
            },
            [=](const Offer& offer) { return guarded_text(offer.*field); }};
}

Column list_column(std::string_view name, std::vector<std::string> Offer::*field) {
    return {name,
            [=](Offer& offer, const std::string& text) -> Result<> {
                offer.*field = split(unguarded_text(text));
                return {};
            },
            [=](const Offer& offer) { return guarded_text(joined(offer.*field)); }};
}

Column money_column(std::string_view name, std::int64_t Offer::*field, bool needed = false) {
    return {name,
            [=](Offer& offer, const std::string& text) -> Result<> {
                if (text.empty() && !needed) return {};
                COTTER_ASSIGN(const Money money, Money::parse(text, "USD"));
                if (money.minor < 0 || money.minor > kLargestAmount || text.starts_with('-'))
                    return fail(Errc::refused, fmt::format("'{}' is below zero or too large", one_line(text, 40)));
                offer.*field = money.minor;
                return {};
            },
            [=](const Offer& offer) { return money_text(offer.*field); }};
}

Column number_column(std::string_view name, int Offer::*field, int most) {
    return {name,
            [=](Offer& offer, const std::string& text) -> Result<> {
                if (text.empty()) return {};
                const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), offer.*field);
                if (error != std::errc{} || end != text.data() + text.size() || offer.*field < 0 || offer.*field > most)
                    return fail(Errc::refused,
                                fmt::format("'{}' is not a whole number from 0 to {}", one_line(text, 40), most));
                return {};
            },
            [=](const Offer& offer) { return std::to_string(offer.*field); }};
}

Column flag_column(std::string_view name, bool Offer::*field) {
    return {name,
            [=](Offer& offer, const std::string& text) -> Result<> {
                if (!text.empty() && text != "yes" && text != "no")
                    return fail(Errc::refused, fmt::format("'{}' is neither yes nor no", one_line(text, 40)));
                offer.*field = text == "yes";
                return {};
            },
            [=](const Offer& offer) { return std::string(offer.*field ? "yes" : ""); }};
}

Result<> read_covers(Offer& offer, const std::string& text) {
    for (const std::string& part : split(unguarded_text(text))) {
        COTTER_ASSIGN(Cover cover, cover_from(part));
        offer.covers.push_back(std::move(cover));
    }
    return {};
}

std::string write_covers(const Offer& offer) {
    std::vector<std::string> parts;
    for (const Cover& cover : offer.covers) parts.push_back(cover_text(cover));
    return guarded_text(joined(parts));
}

Result<> read_currency(Offer& offer, const std::string& text) {
    if (text.size() != 3 || text.find_first_not_of("ABCDEFGHIJKLMNOPQRSTUVWXYZ") != std::string::npos)
        return fail(Errc::refused, fmt::format("'{}' is no currency code such as USD", one_line(text, 20)));
    offer.currency = text;
    return {};
}

Result<> read_seen(Offer& offer, const std::string& text) {
    if (text.empty()) return {};
    COTTER_ASSIGN(offer.seen, Date::parse(text));
    return {};
}

Result<> read_id(Offer& offer, const std::string& text) {
    if (text.empty()) return {};
    COTTER_ASSIGN(offer.id.uuid, Uuid::parse(text));
    return {};
}

std::vector<Column> columns() {
    return {text_column("supplier", &Offer::supplier, true),
            text_column("title", &Offer::title, true),
            {"covers", read_covers, write_covers},
            money_column("price", &Offer::price, true),
            {"currency", read_currency, [](const Offer& offer) { return offer.currency; }},
            text_column("part_number", &Offer::part_number),
            list_column("includes", &Offer::includes),
            list_column("excludes", &Offer::excludes),
            money_column("core", &Offer::core),
            money_column("freight", &Offer::freight),
            number_column("lead_days", &Offer::lead_days, 3'650),
            number_column("warranty_months", &Offer::warranty_months, 1'200),
            number_column("warranty_miles", &Offer::warranty_miles, 10'000'000),
            flag_column("warranty_labour", &Offer::warranty_labour),
            flag_column("maker_supplied", &Offer::maker_supplied),
            flag_column("untaxed", &Offer::untaxed),
            text_column("source", &Offer::source),
            {"seen", read_seen, [](const Offer& offer) { return offer.seen ? offer.seen->text() : std::string(); }},
            text_column("note", &Offer::note),
            {"id", read_id, [](const Offer& offer) { return offer.id.text(); }}};
}

constexpr std::size_t kNeededColumns = 5;

// For each field of a line its column.
Result<std::vector<std::size_t>> read_header(const CsvLine& header, const std::vector<Column>& known) {
    std::vector<std::size_t> out;
    for (const std::string& name : header.fields) {
        std::size_t at = 0;
        while (at < known.size() && known[at].name != name) ++at;
        if (at == known.size())
            return fail(Errc::refused, fmt::format("there is no column '{}'", one_line(name, 40)), "line 1",
                        "take the names from an exported file");
        if (std::find(out.begin(), out.end(), at) != out.end())
            return fail(Errc::refused, fmt::format("the column '{}' is there twice", name), "line 1");
        out.push_back(at);
    }
    for (std::size_t at = 0; at < kNeededColumns; ++at)
        if (std::find(out.begin(), out.end(), at) == out.end())
            return fail(Errc::refused, fmt::format("the column '{}' is missing", known[at].name), "line 1",
                        "the first line names the columns");
    return out;
}

Result<Offer> read_offer(const CsvLine& line, const std::vector<std::size_t>& header,
                         const std::vector<Column>& known) {
    if (line.fields.size() != header.size())
        return fail(Errc::refused, fmt::format("{} fields where the header has {}", line.fields.size(), header.size()));
    Offer offer;
    for (std::size_t f = 0; f < header.size(); ++f) {
        const Column& column = known[header[f]];
        if (auto read = column.read(offer, line.fields[f]); !read)
            return fail(Errc::refused, fmt::format("{}: {}", column.name, read.error().line()));
    }
    return offer;
}

}  // namespace

Result<CsvOffers> offers_from_csv(std::string_view csv, const Instant& at, const std::string& by, Random& random) {
    if (!is_utf8(csv)) return fail(Errc::refused, "the file is not UTF-8 text", {}, "save it as UTF-8 CSV");
    COTTER_ASSIGN(const auto lines, csv_lines(csv));
    if (lines.empty()) return fail(Errc::refused, "the file is empty");
    if (lines.size() > kMostLines) return fail(Errc::refused, "the file has more than 100,000 lines");
    const auto known = columns();
    COTTER_ASSIGN(const auto header, read_header(lines[0], known));
    CsvOffers out;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        auto offer = read_offer(lines[i], header, known);
        if (!offer) {
            out.problems.push_back({lines[i].number, offer.error().line()});
            continue;
        }
        if (offer->id.nil()) offer->id = {Uuid::random(random)};
        offer->at = at;
        offer->by = by;
        out.offers.push_back(std::move(*offer));
    }
    return out;
}

std::string offers_to_csv(const std::vector<Offer>& offers) {
    const auto known = columns();
    std::string out;
    std::vector<std::string> fields;
    for (const Column& column : known) fields.emplace_back(column.name);
    add_csv_line(out, fields);
    for (const Offer& offer : offers) {
        fields.clear();
        for (const Column& column : known) fields.push_back(column.write(offer));
        add_csv_line(out, fields);
    }
    return out;
}

}  // namespace cotter
