// The records of a price: what a job needs, what suppliers offer, what was quoted and what was answered. Plain values.
// Money: whole minor units (cents) of the currency beside it, never negative unless said. Percentages as entered.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "core/survey/records.h"

namespace cotter {

// What an amount of goods is counted in. Without it nothing can be compared: 'a pair' may be one corner or one axle.
enum class Basis { unsaid, corners, pieces, volume, length };
constexpr auto names(Basis) {
    return name_list("unsaid", "corners", "pieces", "volume", "length");
}

// So much on that basis. Corners and pieces: a whole number with unit "1"; an axle is two corners.
struct Extent {
    Basis basis = Basis::unsaid;
    Amount amount;

    bool operator==(const Extent&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("basis", s.basis);
        f.must("amount", s.amount);
    }
};

// What is replaced together with the part that was found bad.
enum class ReplacedBy { piece, wheel, axle, trailer, volume };
constexpr auto names(ReplacedBy) {
    return name_list("piece", "wheel", "axle", "trailer", "volume");
}

// What the findings call for.
struct Need {
    Id<Need> id;
    std::string item;  // "brake pads": offers name the same item
    std::vector<Id<Finding>> findings;
    std::vector<Place> places;  // where it goes
    ReplacedBy rule = ReplacedBy::piece;
    Extent wanted;                          // in all, before spill; an amount of 0: not known yet
    bool matched = false;                   // friction part or tyre: whole axles, and one lot across an axle
    Number spill_percent;                   // volumes: how much more is bought
    std::vector<std::string> must_include;  // "clips", "guide pins": an offer that leaves them out is incomplete
    bool by_hand = false;                   // a person has changed it, so it is not derived anew
    std::string note;
    Instant at;
    std::string by;
    bool left_out = false;  // nothing is bought for it, because a person said so; its amount stays

    bool operator==(const Need&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("item", s.item);
        f.may("findings", s.findings);
        f.may("places", s.places);
        f.must("rule", s.rule);
        f.must("wanted", s.wanted);
        f.may("matched", s.matched);
        f.may("spill_percent", s.spill_percent);
        f.may("must_include", s.must_include);
        f.may("by_hand", s.by_hand);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
        f.may("left_out", s.left_out);
    }
};

// How much of one item a pack holds.
struct Cover {
    std::string item;
    Extent extent;

    bool operator==(const Cover&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("item", s.item);
        f.must("extent", s.extent);
    }
};

// What a supplier asks for one pack, as seen on a day.
struct Offer {
    Id<Offer> id;
    std::string supplier;
    std::string title;  // as the supplier calls it
    std::string part_number;
    std::vector<Cover> covers;  // what one pack covers; a kit covers several items. Empty: cannot be compared
    std::int64_t price = 0;     // of one pack
    std::string currency = "USD";
    std::vector<std::string> includes;
    std::vector<std::string> excludes;
    std::int64_t core = 0;     // deposit on one pack, given back with the old part
    std::int64_t freight = 0;  // once for all offers of this supplier with the same freight
    int lead_days = 0;         // 0: can be had today
    int warranty_months = 0;
    int warranty_miles = 0;
    bool warranty_labour = false;  // the warranty pays for labour too
    bool maker_supplied = false;   // the axle or brake maker's own part
    bool untaxed = false;
    std::optional<Id<Shot>> shot;  // a photo of the source
    std::string source;            // catalogue page, counter, link
    std::optional<Date> seen;      // the day the price was seen
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Offer&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("supplier", s.supplier);
        f.must("title", s.title);
        f.may("part_number", s.part_number);
        f.may("covers", s.covers);
        f.must("price", s.price);
        f.must("currency", s.currency);
        f.may("includes", s.includes);
        f.may("excludes", s.excludes);
        f.may("core", s.core);
        f.may("freight", s.freight);
        f.may("lead_days", s.lead_days);
        f.may("warranty_months", s.warranty_months);
        f.may("warranty_miles", s.warranty_miles);
        f.may("warranty_labour", s.warranty_labour);
        f.may("maker_supplied", s.maker_supplied);
        f.may("untaxed", s.untaxed);
        f.may("shot", s.shot);
        f.may("source", s.source);
        f.may("seen", s.seen);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

// A core line is a deposit: it stands beside the total, not in it.
enum class LineKind { parts, freight, labour, call_out, supplies, disposal, other, discount, core };
constexpr auto names(LineKind) {
    return name_list("parts", "freight", "labour", "call-out", "supplies", "disposal", "other", "discount", "core");
}

enum class LeftoverTo { nobody, customer, stock, waste };
constexpr auto names(LeftoverTo) {
    return name_list("nobody", "customer", "stock", "waste");
}

// What whole packs leave over of one item, and who keeps it: never billed in silence.
struct Leftover {
    std::string item;
    Extent extent;
    LeftoverTo to = LeftoverTo::nobody;

    bool operator==(const Leftover&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("item", s.item);
        f.must("extent", s.extent);
        f.may("to", s.to);
    }
};

// One line, low and high. Only a discount is negative.
struct QuoteLine {
    int number = 0;  // within its quote, from 1; answers name it
    LineKind kind = LineKind::parts;
    std::string text;
    std::string basis;  // the arithmetic: "2 × 69.50, one covers 2 corners"
    std::vector<Id<Need>> needs;
    std::optional<Id<Offer>> offer;
    std::int64_t packs = 0;
    std::int64_t low = 0;
    std::int64_t high = 0;
    Number tax_percent;  // "0": not taxed

    bool operator==(const QuoteLine&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("number", s.number);
        f.must("kind", s.kind);
        f.must("text", s.text);
        f.may("basis", s.basis);
        f.may("needs", s.needs);
        f.may("offer", s.offer);
        f.may("packs", s.packs);
        f.must("low", s.low);
        f.must("high", s.high);
        f.may("tax_percent", s.tax_percent);
    }
};

// The tax of one rate: on the sum of its lines, rounded once.
struct QuoteTax {
    std::string name;
    Number percent;
    std::int64_t on_low = 0;
    std::int64_t on_high = 0;
    std::int64_t low = 0;
    std::int64_t high = 0;

    bool operator==(const QuoteTax&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.may("name", s.name);
        f.must("percent", s.percent);
        f.must("on_low", s.on_low);
        f.must("on_high", s.on_high);
        f.must("low", s.low);
        f.must("high", s.high);
    }
};

// By what a quote's offers were chosen.
enum class Aim { by_hand, cheapest, soonest, best_warranty, maker_supplied };
constexpr auto names(Aim) {
    return name_list("by hand", "cheapest", "soonest", "best warranty", "maker-supplied");
}

// Whether it was accepted is said line by line in Decisions, not here.
enum class QuoteState { drafted, offered, changed, done };
constexpr auto names(QuoteState) {
    return name_list("drafted", "offered", "changed", "done");
}

// A quote as the customer gets it. From `offered` on its content is frozen under `fingerprint`.
struct Quote {
    Id<Quote> id;
    std::string name;  // "cheapest"
    Aim aim = Aim::by_hand;
    int version = 1;
    std::optional<Id<Quote>> replaces;  // the version before
    QuoteState state = QuoteState::drafted;
    std::string currency = "USD";
    std::vector<QuoteLine> lines;
    std::vector<QuoteTax> taxes;
    std::int64_t total_low = 0;  // lines and taxes, cores apart
    std::int64_t total_high = 0;
    std::int64_t cores = 0;  // deposits held until the old parts come back, beside the total
    int corners = 0;         // that the work touches; 0: no price per corner
    int ready_days = 0;      // the longest lead time used
    std::vector<std::string> missing;
    std::vector<Leftover> leftovers;
    std::string high_because;                    // what makes it high
    std::optional<std::int64_t> not_to_exceed;   // a promise, so it ends with `expires`
    std::optional<std::int64_t> approval_limit;  // work beyond it needs a new yes
    std::optional<Date> expires;
    std::optional<Instant> offered_at;
    std::string fingerprint;  // of the offered content, see quote_fingerprint(); empty while drafted
    std::string note;
    Instant at;
    std::string by;

    bool operator==(const Quote&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("name", s.name);
        f.must("aim", s.aim);
        f.must("version", s.version);
        f.may("replaces", s.replaces);
        f.must("state", s.state);
        f.must("currency", s.currency);
        f.must("lines", s.lines);
        f.may("taxes", s.taxes);
        f.must("total_low", s.total_low);
        f.must("total_high", s.total_high);
        f.may("cores", s.cores);
        f.may("corners", s.corners);
        f.may("ready_days", s.ready_days);
        f.may("missing", s.missing);
        f.may("leftovers", s.leftovers);
        f.may("high_because", s.high_because);
        f.may("not_to_exceed", s.not_to_exceed);
        f.may("approval_limit", s.approval_limit);
        f.may("expires", s.expires);
        f.may("offered_at", s.offered_at);
        f.may("fingerprint", s.fingerprint);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

enum class Said { accepted, declined };
constexpr auto names(Said) {
    return name_list("accepted", "declined");
}

// How the answer came.
enum class Channel { in_person, phone, message, email, paper };
constexpr auto names(Channel) {
    return name_list("in person", "phone", "message", "email", "paper");
}

// A pen's way from touching down to lifting: at least one point, 0…1 of the signing field's width and height.
struct PenStroke {
    std::vector<TagPoint> points;

    bool operator==(const PenStroke&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("points", s.points);
    }
};

// A named person's answer to some lines of an offered quote. A later one on the same line counts.
struct Decision {
    Id<Decision> id;
    Id<Quote> quote;
    std::string fingerprint;  // of the quote as it was shown: an answer cannot slip to another text
    std::vector<int> lines;   // numbers of lines
    Said said = Said::accepted;
    std::string name;  // who answered
    Channel channel = Channel::in_person;
    std::vector<PenStroke> signature;  // drawn by that person; may be empty
    std::string note;
    Instant at;
    std::string by;  // who took it down

    bool operator==(const Decision&) const = default;
    template <class Self, class F>
    static void each_field(Self& s, F&& f) {
        f.must("id", s.id);
        f.must("quote", s.quote);
        f.must("fingerprint", s.fingerprint);
        f.must("lines", s.lines);
        f.must("said", s.said);
        f.must("name", s.name);
        f.must("channel", s.channel);
        f.may("signature", s.signature);
        f.may("note", s.note);
        f.must("at", s.at);
        f.must("by", s.by);
    }
};

}  // namespace cotter
