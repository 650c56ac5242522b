// See doubts.h. The bounds are wide: they catch a slip, never a rare trailer.
#include "core/trade/doubts.h"

#include <fmt/format.h>

namespace cotter {

namespace {

constexpr double kPsi = 6894.757293168;
constexpr double kInch = 0.0254;
constexpr double kPound = 0.45359237;

class Doubts {
public:
    Doubts(const Trailer& trailer, const Visit& visit, std::vector<PlateDoubt>& out)
        : trailer_(trailer), visit_(visit), out_(out) {}

    void ratings() {
        mass("gvwr", trailer_.gvwr, 300, 100'000);
        double sum = 0;
        bool all = !trailer_.axles.empty();
        for (std::size_t i = 0; i < trailer_.axles.size(); ++i) {
            const auto& gawr = trailer_.axles[i].gawr;
            const std::string id = fmt::format("gawr {}", i + 1);
            mass(id, gawr, 300, 30'000);
            all = all && gawr.has_value();
            if (!gawr) continue;
            sum += gawr->si();
            if (trailer_.gvwr && gawr->si() > trailer_.gvwr->si() * 1.0001)
                say(id, fmt::format("Axle {} is rated {}, more than the whole trailer's {}. Read both again.", i + 1,
                                    gawr->text(), trailer_.gvwr->text()));
        }
        if (all && trailer_.gvwr && sum < trailer_.gvwr->si() * 0.6)
            say("gvwr", fmt::format("The axles together carry far less than the trailer's rating of {}. "
                                    "Read the plate again.",
                                    trailer_.gvwr->text()));
    }

    void tires() {
        pressure("pressure", trailer_.tyre_pressure);
        for (std::size_t i = 0; i < trailer_.axles.size(); ++i)
            pressure(fmt::format("pressure {}", i + 1), trailer_.axles[i].tire_pressure);
    }

    void sizes() {
        mass("coupler rating", trailer_.coupler_rating, 300, 100'000);
        length("ball size", trailer_.ball_size, 1.5, 4);
        length("width", trailer_.width, 30, 140);
        length("length", trailer_.length, 48, 720);
    }

    void built(const Date& today) {
        if (trailer_.built.size() < 4) return;
        const int year = std::stoi(trailer_.built.substr(0, 4));
        if (year > today.year || year < 1930)
            say("built", fmt::format("Built {}? Read the plate again.", trailer_.built));
    }

    void tow() {
        if (!visit_.tow) return;
        mass("tow gvwr", visit_.tow->gvwr, 1'500, 100'000);
        mass("tow weights", visit_.tow->axle_weights, 1'500, 100'000);
        mass("hitch rating", visit_.tow->hitch_rating, 500, 100'000);
        mass("ball rating", visit_.tow->ball_rating, 500, 100'000);
        length("tow ball", visit_.tow->ball_size, 1.5, 4);
    }

private:
    void say(std::string field, std::string words) { out_.push_back({std::move(field), std::move(words)}); }

    void mass(const std::string& field, const std::optional<Amount>& amount, double least_lb, double most_lb) {
        if (!amount) return;
        const double lb = amount->si() / kPound;
        if (lb < least_lb || lb > most_lb)
            say(field, fmt::format("{} is unusual. Is it lb or kg, and are all digits there?", amount->text()));
    }
    void pressure(const std::string& field, const std::optional<Amount>& amount) {
        if (!amount) return;
        const double psi = amount->si() / kPsi;
        if (psi < 15 || psi > 150)
            say(field, fmt::format("{} is unusual for a tire. Is it psi, kPa or bar?", amount->text()));
    }
    void length(const std::string& field, const std::optional<Amount>& amount, double least_in, double most_in) {
        if (!amount) return;
        const double inches = amount->si() / kInch;
        if (inches < least_in || inches > most_in)
            say(field, fmt::format("{} is unusual. Look at the unit again.", amount->text()));
    }

    const Trailer& trailer_;
    const Visit& visit_;
    std::vector<PlateDoubt>& out_;
};

}  // namespace

std::vector<PlateDoubt> plate_doubts(const Trailer& trailer, const Visit& visit, const Date& today) {
    std::vector<PlateDoubt> out;
    Doubts doubts(trailer, visit, out);
    doubts.ratings();
    doubts.tires();
    doubts.sizes();
    doubts.built(today);
    doubts.tow();
    return out;
}

}  // namespace cotter
