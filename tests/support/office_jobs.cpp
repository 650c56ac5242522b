// One job after the other.
#include "tests/support/office_jobs.h"

#include <array>
#include <fmt/format.h>

#include "core/trade/reading_spec.h"
#include "core/survey/quote_rules.h"
#include "tests/support/invented.h"

namespace cotter::test {

namespace {

Axle axle_of(const std::string& model) {
    Axle axle;
    axle.brake = BrakeKind::hydraulic_disc;
    axle.hub = HubKind::oil_bath;
    axle.studs = 8;
    axle.stud_thread = "9/16-18";
    axle.model = model;
    return axle;
}

constexpr std::array kTechnicians{"R. Alder", "M. Grün", "T. Østby", "J. Okafor", "L. Fernández", "S. Brandt"};
constexpr std::array kPlaces{"gravel yard, gate 2", "quarry road", "depot north", "farm shop",
                             "ferry landing",       "Hof Grünau",  "timber yard", "the old mill"};
constexpr std::array kTrades{"nursery", "landscaping", "quarry", "boat yard", "farm", "hire centre", "fair", "dairy"};
constexpr std::array kComponents{"hub cap", "rotor", "brake pads", "seal", "tyre", "wheel bearing", "spring"};
constexpr std::array kDefects{"below line", "heat checks", "worn to the backing", "weeping",
                              "cut",        "rough",       "cracked leaf"};
constexpr std::array kModels{"TX-52", "TX-60 disc", "LD-35", "HD-72"};
constexpr std::array kItems{"brake pads", "hub seal", "gear oil", "wheel bearing kit"};
constexpr std::array kSuppliers{"Feldrain Parts (invented)", "Yardside Supply (invented)", "Nordhub Trade (invented)"};

Amount amount(double value, int digits, const char* unit) {
    return *make_amount(fmt::format("{:.{}f}", value, digits), unit);
}

// Everything of one job in one place.
class Maker {
public:
    Maker(int number, const OfficeShape& shape)
        : number_(number), trailer_(number % shape.trailers), visit_(number / shape.trailers) {
        opened_ = *Instant::parse("2021-01-04T08:00:00-06:00");
        opened_.unix_s += std::int64_t{visit_} * 150 * 86'400 + std::int64_t{trailer_} * 421;
        for (int i = 0; i < shape.photos; ++i) add_shot(i);
    }

    Job make() {
        add_visit();
        add_trailer();
        add_way();
        for (const Place& corner : job_.only<Trailer>()->corners()) add_corner(corner);
        add_quote();
        job_.all<SignOff>().push_back({{id()}, at(240), by_, "I did the work listed.", ""});
        return std::move(job_);
    }

private:
    Uuid id() { return office_id(number_, ++part_); }
    [[nodiscard]] Instant at(int minute) const { return {opened_.unix_s + minute * 60, opened_.offset_min}; }
    // A number below `n` that depends on the job and on what it is asked for.
    [[nodiscard]] std::size_t pick(int what, std::size_t n) const {
        std::uint64_t x =
            static_cast<std::uint64_t>(number_) * 0x9E3779B97F4A7C15ull + static_cast<std::uint64_t>(what);
        x = (x ^ x >> 29) * 0xBF58476D1CE4E5B9ull;
        return static_cast<std::size_t>((x ^ x >> 32) % n);
    }

    void add_visit() {
        Visit v;
        v.id = {office_id(number_, 0)};
        v.opened = opened_;
        v.technician = by_;
        v.company = "Alder & Grün Wheel Ends (invented)";
        v.customer = fmt::format("{} {}", kTrades[static_cast<std::size_t>(trailer_) % kTrades.size()], trailer_ / 20);
        v.place = kPlaces[static_cast<std::size_t>(trailer_ / 3) % kPlaces.size()];
        v.complaint = pick(1, 3) == 0 ? "pulls to one side when braking" : "";
        job_.all<Visit>().push_back(v);
    }

    void add_trailer() {
        Trailer t;
        t.id = {office_id(trailer_ + 50'000'000, 1)};
        t.unit = fmt::format("{}-{:05}", trailer_ % 2 == 0 ? "NUR" : "QRY", trailer_);
        t.plate = fmt::format("T {:03} {:03}", trailer_ / 1000, trailer_ % 1000);
        t.vin = invented_vin(trailer_);
        t.kind = "tandem-axle deck trailer";
        const std::string model = kModels[static_cast<std::size_t>(trailer_) % kModels.size()];
        t.axles.resize(2, axle_of(model));
        job_.all<Trailer>().push_back(t);
    }

    Reading reading(const Place& place, std::string_view what, const char* unit) {
        Reading r;
        r.id = {id()};
        r.place = place;
        r.what = what;
        r.unit = unit;
        r.at = at(20 + part_ % 60);
        r.by = by_;
        return r;
    }

    void add_way() {
        Reading r = reading(Place::at(Station::trailer), what::run_total, "[mi_i]");
        r.points = {{"", *Number::parse(std::to_string(4'000 + visit_ * 5'200 + trailer_ % 700))}};
        r.instrument = "hub counter";
        job_.all<Reading>().push_back(r);
    }

    void add_corner(const Place& corner) {
        const double pad = 10.2 - 1.1 * visit_ - 0.1 * static_cast<double>(corner.axle + trailer_ % 5);
        Reading pads = reading(corner, what::pad_thickness, "mm");
        for (const char* where : {"inner", "outer"})
            pads.points.push_back({where, *Number::parse(fmt::format("{:.1f}", std::max(0.6, pad)))});
        pads.resolution = *Number::parse("0.1");
        pads.instrument = "caliper C1";
        job_.all<Reading>().push_back(pads);
        Reading tread = reading(corner, what::tread_depth, "mm");
        tread.points = {{"", *Number::parse(fmt::format("{:.1f}", std::max(1.0, 8.0 - 0.7 * visit_)))}};
        job_.all<Reading>().push_back(tread);
        add_torque(corner);
        add_level(corner);
        if (pick(corner.axle * 2 + static_cast<int>(corner.side), 3) == 0) add_finding(corner);
    }

    void add_torque(const Place& corner) {
        Torque t;
        t.id = {id()};
        t.place = corner;
        t.joint = "wheel nuts";
        t.fasteners = 8;
        t.target = amount(120, 0, "[lbf_av].[ft_i]");
        t.target_source = "axle maker's manual, page 12";
        for (const int setting : {24, 80, 120, 120})
            t.passes.push_back({amount(setting, 0, "[lbf_av].[ft_i]"), {1, 5, 3, 7, 2, 6, 4, 8}});
        t.wrench = "TW-3";
        t.wrench_calibrated = Date{opened_.local_date().year, 1, 2};
        t.at = at(200);
        t.by = by_;
        job_.all<Torque>().push_back(t);
    }

    void add_level(const Place& corner) {
        Level l;
        l.id = {id()};
        l.place = corner;
        l.fluid = "hub oil";
        l.product = "gear oil SAE 90";
        l.before = {LevelMark::below, *make_amount("-6", "mm"), ""};
        l.added = amount(90 + static_cast<double>(pick(9, 40)), 0, "mL");
        l.after = LevelSeen{LevelMark::at, std::nullopt, ""};
        l.at = at(210);
        l.by = by_;
        job_.all<Level>().push_back(l);
    }

    void add_finding(const Place& corner) {
        const std::size_t which = pick(corner.axle + 11, kComponents.size());
        Finding f;
        f.id = {id()};
        f.place = corner;
        f.component = kComponents[which];
        f.defect = kDefects[which];
        f.grade = static_cast<Grade>(1 + pick(corner.axle + 21, 3));
        f.note = pick(22, 4) == 0 ? "seen with the wheel off, photographed" : "";
        f.todo = fmt::format("replace {}", kComponents[which]);
        f.outcome = pick(23, 2) == 0 ? Outcome::repaired : Outcome::open;
        f.at = at(60);
        f.by = by_;
        job_.all<Finding>().push_back(f);
    }

    void add_shot(int i) {
        Shot s;
        s.id = {id()};
        s.place = Place::corner(1 + i / 2 % 2, i / 4 % 2 == 0 ? Side::left : Side::right);
        s.slot = i / 8 % 2 == 0 ? Slot::brake : Slot::cap;
        s.stage = i % 2 == 0 ? Stage::before : Stage::after;
        s.added = at(10 + i);
        job_.all<Shot>().push_back(s);
    }

    void add_quote() {
        if (job_.all<Finding>().empty()) return;
        const std::size_t item = pick(31, kItems.size());
        Offer offer;
        offer.id = {id()};
        offer.supplier = kSuppliers[pick(32, kSuppliers.size())];
        offer.title = fmt::format("{} set", kItems[item]);
        offer.part_number = fmt::format("{}-{}", item + 10, 4'400 + item * 7);
        offer.covers = {{kItems[item], {Basis::corners, amount(2, 0, "1")}}};
        offer.price = 4'950 + static_cast<std::int64_t>(item) * 1'000;
        offer.at = at(70);
        offer.by = by_;
        job_.all<Offer>().push_back(offer);
        Quote quote;
        quote.id = {id()};
        quote.name = "cheapest";
        quote.state = visit_ % 2 == 0 ? QuoteState::done : QuoteState::offered;
        QuoteLine parts{1, LineKind::parts, offer.title,     "2 packs", {}, offer.id,
                        2, 2 * offer.price, 2 * offer.price, {}};
        QuoteLine labour{2, LineKind::labour, "two hours", "", {}, {}, 0, 18'000, 20'000, {}};
        quote.lines = {parts, labour};
        quote.total_low = parts.low + labour.low;
        quote.total_high = parts.high + labour.high;
        quote.offered_at = at(80);
        quote.at = at(75);
        quote.by = by_;
        quote.fingerprint = quote_fingerprint(quote);
        job_.all<Quote>().push_back(quote);
        Decision yes{{id()}, quote.id, quote.fingerprint, {1, 2}, Said::accepted, "P. Owner", Channel::phone, {}, {},
                     at(90), by_};
        job_.all<Decision>().push_back(yes);
    }

    int number_, trailer_, visit_;
    int part_ = 0;
    Instant opened_;
    std::string by_ = office_technician(number_);
    Job job_;
};

}  // namespace

Uuid office_id(int number, int part) {
    // Mixed, so that ids differ from their first digits on, as random ones do.
    const std::uint32_t head = static_cast<std::uint32_t>(number) * 2654435761u;
    return *Uuid::parse(fmt::format("{:08x}-{:04x}-4000-8000-{:012x}", head, part & 0xffff, number));
}

std::string office_technician(int number) {
    return kTechnicians[static_cast<std::size_t>(number) % kTechnicians.size()];
}

Job office_job(int number, const OfficeShape& shape) {
    return Maker(number, shape).make();
}

}  // namespace cotter::test
