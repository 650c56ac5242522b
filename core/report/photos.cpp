// Photos of a place, two in a row: before and after side by side where there are both, then the others.
#include <algorithm>
#include <array>

#include <fmt/format.h>

#include "core/report/parts.h"
#include "core/report/say.h"

namespace cotter {

namespace {

constexpr double kBetween = 12;    // the two of a row
constexpr double kMostHigh = 175;  // of a picture
constexpr std::size_t kMostCaptionLines = 40;

using ShotRow = std::array<const Shot*, 2>;

struct PhotoRows {
    std::vector<ShotRow> pairs;  // before, after; nullptr where one list is shorter
    std::vector<ShotRow> others;
};

std::vector<const Shot*> shots_of(const PlaceRecords& records, Slot slot, Wheel wheel, Stage stage) {
    std::vector<const Shot*> out;
    std::copy_if(records.shots.begin(), records.shots.end(), std::back_inserter(out), [&](const Shot* shot) {
        return shot->slot == slot && shot->place.wheel == wheel && shot->stage == stage;
    });
    return out;
}

PhotoRows arrange(const PlaceRecords& records) {
    PhotoRows rows;
    std::vector<const Shot*> single;
    for (std::size_t slot = 0; slot < names(Slot{}).size(); ++slot)
        for (const Wheel wheel : {Wheel::only, Wheel::inner, Wheel::outer}) {
            const auto before = shots_of(records, static_cast<Slot>(slot), wheel, Stage::before);
            const auto after = shots_of(records, static_cast<Slot>(slot), wheel, Stage::after);
            if (before.empty() || after.empty()) {
                single.insert(single.end(), before.begin(), before.end());
                single.insert(single.end(), after.begin(), after.end());
                continue;
            }
            for (std::size_t i = 0; i < std::max(before.size(), after.size()); ++i)
                rows.pairs.push_back({i < before.size() ? before[i] : nullptr, i < after.size() ? after[i] : nullptr});
        }
    for (std::size_t i = 0; i < single.size(); i += 2)
        rows.others.push_back({single[i], i + 1 < single.size() ? single[i + 1] : nullptr});
    return rows;
}

std::string findings_on(const Job& job, const Shot& shot) {
    std::vector<int> numbers;
    for (const Tag& tag : job.all<Tag>())
        if (tag.shot == shot.id) numbers.push_back(finding_number(job, tag.finding));
    std::sort(numbers.begin(), numbers.end());
    numbers.erase(std::unique(numbers.begin(), numbers.end()), numbers.end());
    std::string out;
    for (const int number : numbers) out += fmt::format("{}{}", out.empty() ? "" : ", ", number);
    return out.empty() ? out : (numbers.size() == 1 ? "Shows finding " : "Shows findings ") + out;
}

struct LaidPhoto {
    const Shot* shot = nullptr;
    ReportPicture picture;
    double wide = 0, high = 0;
    std::vector<std::string> title, caption;

    [[nodiscard]] double height() const {
        return high + 4 + kStrong.leading() * static_cast<double>(title.size()) +
               kSmall.leading() * static_cast<double>(caption.size());
    }
};

class Grid {
public:
    explicit Grid(Writing& w) : w_(w), column_((w.sheet.width() - kBetween) / 2) {}

    Result<> draw(const std::vector<ShotRow>& rows) {
        for (const ShotRow& row : rows) {
            std::array<LaidPhoto, 2> laid;
            for (std::size_t i = 0; i < 2; ++i)
                if (row[i] != nullptr) {
                    COTTER_ASSIGN(laid[i], lay(*row[i]));
                }
            const double height = std::max(laid[0].height(), laid[1].height());
            w_.sheet.need(height);
            for (std::size_t i = 0; i < 2; ++i)
                if (laid[i].shot != nullptr)
                    COTTER_TRY(put(laid[i], w_.sheet.left() + (column_ + kBetween) * static_cast<double>(i)));
            w_.sheet.gap(height + 10);
        }
        return {};
    }

private:
    Result<LaidPhoto> lay(const Shot& shot) {
        auto picture = w_.in.picture(shot);
        if (!picture) return unexpected(context(picture.error(), where(shot)));
        if (picture->jpeg.empty() || picture->width <= 0 || picture->height <= 0)
            return fail(Errc::refused, "a picture for the report is empty", where(shot), "take the photo in again");
        LaidPhoto out;
        out.shot = &shot;
        out.picture = std::move(*picture);
        const double scale = std::min(column_ / out.picture.width, kMostHigh / out.picture.height);
        out.wide = out.picture.width * scale;
        out.high = out.picture.height * scale;
        const std::string wheel =
            shot.place.wheel == Wheel::only ? "" : fmt::format("{} wheel", name_of(shot.place.wheel));
        out.title =
            w_.sheet.lines(joined({capital(name_of(shot.slot)), wheel, name_of(shot.stage)}, ", "), kStrong, column_);
        out.caption = w_.sheet.lines(caption(shot), kSmall, column_);
        if (out.caption.size() > kMostCaptionLines) {
            out.caption.resize(kMostCaptionLines);
            out.caption.back() = "… (the whole note is in job.json)";
        }
        return out;
    }

    [[nodiscard]] std::string caption(const Shot& shot) const {
        const std::string when =
            shot.photo.taken ? "Taken " + w_.time(*shot.photo.taken) : "Added " + w_.time(shot.added);
        return joined({when, w_.in.photo_name ? w_.in.photo_name(shot) : "", findings_on(w_.job, shot), shot.note},
                      "\n");
    }

    [[nodiscard]] static std::string where(const Shot& shot) {
        return fmt::format("photo of {}, {}", place_name(shot.place), name_of(shot.slot));
    }

    Result<> put(const LaidPhoto& laid, double x) {
        double y = w_.sheet.y();
        if (auto done = w_.sheet.canvas().picture(laid.picture, {x, y}, laid.wide, laid.high); !done)
            return unexpected(context(done.error(), where(*laid.shot)));
        const std::array<PaperSpot, 4> edge{PaperSpot{x, y}, PaperSpot{x + laid.wide, y},
                                            PaperSpot{x + laid.wide, y + laid.high}, PaperSpot{x, y + laid.high}};
        w_.sheet.canvas().polygon(edge, {}, kBlack, 0.6);
        y += laid.high + 4;
        for (const std::string& line : laid.title) {
            w_.sheet.line_at({x, y}, line, kStrong);
            y += kStrong.leading();
        }
        for (const std::string& line : laid.caption) {
            w_.sheet.line_at({x, y}, line, kSmall);
            y += kSmall.leading();
        }
        return {};
    }

    Writing& w_;
    double column_;
};

}  // namespace

Result<> draw_photos(Writing& w, const PlaceRecords& records) {
    const PhotoRows rows = arrange(records);
    Grid grid(w);
    const double first_row = kMostHigh + 70;
    if (!rows.pairs.empty()) {
        w.sheet.need(first_row);
        w.sheet.heading("Photos, before and after");
        COTTER_TRY(grid.draw(rows.pairs));
    }
    if (!rows.others.empty()) {
        w.sheet.need(first_row);
        w.sheet.heading(rows.pairs.empty() ? "Photos" : "More photos");
        COTTER_TRY(grid.draw(rows.others));
    }
    return {};
}

}  // namespace cotter
