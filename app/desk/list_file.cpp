// See list_file.h.
#include "app/desk/list_file.h"

#include <fmt/format.h>

#include "core/quote/csv_text.h"
#include "core/report/list_pdf.h"

namespace cotter::desk {

namespace {

constexpr std::uint64_t kMostFont = 16u << 20u;
constexpr int kMostOfOneDay = 999;  // lists of one name

class WriteFile final : public Task {
public:
    WriteFile(Files& files, NewFile file, std::function<Result<Bytes>()> make,
              std::function<void(Result<std::string>)> told)
        : files_(files), file_(std::move(file)), make_(std::move(make)), told_(std::move(told)) {}

    bool step() override {
        result_ = write();
        return true;
    }
    void done() override { told_(std::move(result_)); }

private:
    Result<std::string> write() {
        COTTER_ASSIGN(const Bytes bytes, make_());
        COTTER_TRY(files_.make_folders(parent_folder(file_.path)));
        COTTER_ASSIGN(const std::string path, free_path(bytes));
        COTTER_TRY(replace_file(files_, path, bytes));
        return path;
    }

    // Where nothing stands yet, or the very same.
    Result<std::string> free_path(const Bytes& bytes) {
        for (int number = 1; number <= kMostOfOneDay; ++number) {
            const std::string path =
                fmt::format("{}{}.{}", file_.path, number == 1 ? "" : fmt::format("_{}", number), file_.ending);
            const auto there = files_.info(path);
            if (!there && there.error().code == Errc::not_found) return path;
            if (!there) return unexpected(there.error());
            if (there->size != bytes.size()) continue;
            const auto old = read_file(files_, path, bytes.size());
            if (old && *old == bytes) return path;
        }
        return fail(Errc::refused, "there are too many lists of this name already", file_.path, "move some away");
    }

    Files& files_;
    NewFile file_;
    std::function<Result<Bytes>()> make_;
    std::function<void(Result<std::string>)> told_;
    Result<std::string> result_;
};

}  // namespace

Result<Bytes> list_as_pdf(Files& files, const ListOnPaper& list) {
    ListPaper paper;
    COTTER_ASSIGN(const Bytes font, read_file(files, join_path(list.share, "fonts/DejaVuSans.ttf"), kMostFont));
    COTTER_ASSIGN(const Bytes bold, read_file(files, join_path(list.share, "fonts/DejaVuSans-Bold.ttf"), kMostFont));
    paper.font = font;
    paper.font_bold = bold;
    paper.title = list.title;
    paper.under = list.under;
    paper.empty = list.empty;
    paper.at = list.at;
    paper.software = list.software;
    for (const TableColumn& c : list.columns)
        if (c.drawn()) paper.columns.push_back({c.title, c.least / 100.0 + c.share});
    for (const TableRow& row : list.rows) {
        std::vector<ListCell> cells;
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            if (list.columns[i].drawn()) cells.push_back({row.cells[i].text, row.cells[i].grade});
        paper.rows.push_back(std::move(cells));
    }
    return list_pdf(paper);
}

std::string list_as_csv(const ListOnPaper& list) {
    std::string out;
    std::vector<std::string> head;
    for (const TableColumn& c : list.columns)
        if (c.drawn()) head.push_back(c.title);
    add_csv_line(out, head);
    for (const TableRow& row : list.rows) {
        std::vector<std::string> cells;
        for (std::size_t i = 0; i < row.cells.size(); ++i)
            if (list.columns[i].drawn()) cells.push_back(guarded_text(row.cells[i].text));
        add_csv_line(out, cells);
    }
    return out;
}

std::unique_ptr<Task> write_file(Files& files, NewFile file, std::function<Result<Bytes>()> make,
                                 std::function<void(Result<std::string>)> told) {
    return std::make_unique<WriteFile>(files, std::move(file), std::move(make), std::move(told));
}

}  // namespace cotter::desk
