// The trailer from above, front at the top, with the gravest grade at each corner.
#include <algorithm>
#include <array>

#include "core/report/grade_sign.h"
#include "core/report/parts.h"
#include "core/report/say.h"

namespace cotter {

namespace {

constexpr Type kNote{Face::regular, 7, kSoft};

class Plan {
public:
    Plan(Writing& w, Spot upper_left, double width, double height)
        : w_(w), canvas_(w.sheet.canvas()), at_(upper_left), width_(width), height_(height) {}

    void draw(const Trailer& trailer) {
        const double mid = at_.x + width_ / 2, deck_left = at_.x + 36, deck_right = at_.x + width_ - 36;
        centred("front", at_.y);
        const double nose = at_.y + 12, deck_top = at_.y + 48, deck_bottom = at_.y + height_;
        canvas_.line({mid, nose}, {deck_left + 6, deck_top}, 1.2);
        canvas_.line({mid, nose}, {deck_right - 6, deck_top}, 1.2);
        canvas_.circle({mid, nose}, 3, kWhite, kBlack, 1.2);
        const std::array<Spot, 4> deck{Spot{deck_left, deck_top}, Spot{deck_right, deck_top},
                                       Spot{deck_right, deck_bottom}, Spot{deck_left, deck_bottom}};
        canvas_.polygon(deck, {}, kBlack, 1.2);
        const auto count = static_cast<int>(trailer.axles.size());
        const double pitch = std::min(30.0, (deck_bottom - deck_top - 20) / std::max(1, count));
        const double first = deck_top + (deck_bottom - deck_top) * 0.55 - pitch * (count - 1) / 2;
        for (int axle = 1; axle <= count; ++axle) draw_axle(axle, first + pitch * (axle - 1), deck_left, deck_right);
    }

private:
    void draw_axle(int axle, double y, double left, double right) {
        canvas_.line({left - 4, y}, {right + 4, y}, 1);
        wheel({left - 8, y});
        wheel({right + 8, y});
        corner(Place::corner(axle, Side::left), {left - 24, y});
        corner(Place::corner(axle, Side::right), {right + 24, y});
        const std::string number = std::to_string(axle);
        const Type type{Face::bold, 8, kBlack};
        const std::array<Spot, 4> gap{Spot{at_.x + width_ / 2 - 7, y - 4}, Spot{at_.x + width_ / 2 + 7, y - 4},
                                      Spot{at_.x + width_ / 2 + 7, y + 4}, Spot{at_.x + width_ / 2 - 7, y + 4}};
        canvas_.polygon(gap, kWhite, {});
        centred(number, y - 5, type);
    }

    void wheel(Spot centre) {
        const std::array<Spot, 4> tyre{Spot{centre.x - 4, centre.y - 10}, Spot{centre.x + 4, centre.y - 10},
                                       Spot{centre.x + 4, centre.y + 10}, Spot{centre.x - 4, centre.y + 10}};
        canvas_.polygon(tyre, kShade, kBlack, 1);
    }

    void corner(const Place& place, Spot centre) {
        const auto found = std::find_if(w_.places.begin(), w_.places.end(),
                                        [&](const PlaceRecords& records) { return records.place == place; });
        const auto worst = found == w_.places.end() ? std::nullopt : found->worst();
        if (worst)
            draw_sign(canvas_, sign_of(*worst), centre, 17);
        else
            w_.sheet.line_at({centre.x - 2, centre.y - 6}, "–", kBody);
    }

    void centred(const std::string& text, double y, const Type& type = kNote) {
        const double wide = text_width(text, canvas_, type.face, type.size);
        w_.sheet.line_at({at_.x + (width_ - wide) / 2, y}, text, type);
    }

    Writing& w_;
    Canvas& canvas_;
    Spot at_;
    double width_, height_;
};

}  // namespace

void draw_plan(Writing& w, Spot upper_left, double width, double height) {
    if (const Trailer* trailer = w.job.only<Trailer>()) Plan(w, upper_left, width, height).draw(*trailer);
}

}  // namespace cotter
