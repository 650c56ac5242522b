// Reading and writing fields.
#include "core/quote/csv_text.h"

#include <array>
#include <fmt/format.h>

namespace cotter {

namespace {

class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {
        if (text_.starts_with("\xEF\xBB\xBF")) at_ = 3;
    }

    Result<std::vector<CsvLine>> lines() {
        std::vector<CsvLine> out;
        while (at_ < text_.size()) {
            CsvLine line{number_, {}};
            for (bool more = true; more;) {
                COTTER_ASSIGN(std::string field, take_field());
                line.fields.push_back(std::move(field));
                more = at_ < text_.size() && text_[at_] == ',';
                if (more) ++at_;
            }
            end_line();
            if (line.fields.size() > 1 || !line.fields[0].empty()) out.push_back(std::move(line));
        }
        return out;
    }

private:
    unexpected<Error> wrong(const char* what) const {
        return fail(Errc::refused, what, fmt::format("line {}", number_), "save it as CSV with a spreadsheet");
    }

    [[nodiscard]] bool at_end() const {
        return at_ >= text_.size() || text_[at_] == ',' || text_[at_] == '\n' || text_.substr(at_, 2) == "\r\n";
    }

    Result<std::string> take_field() {
        if (at_ < text_.size() && text_[at_] == '"') return take_quoted();
        std::string field;
        while (!at_end()) {
            if (text_[at_] == '"') return wrong("a quotation mark stands inside a field without quotation marks");
            field += text_[at_++];
        }
        return field;
    }

    Result<std::string> take_quoted() {
        const std::size_t began = number_;
        std::string field;
        for (++at_; at_ < text_.size(); ++at_) {
            if (text_[at_] == '\n') ++number_;
            if (text_[at_] != '"') {
                field += text_[at_];
            } else if (text_.substr(at_, 2) == "\"\"") {
                field += text_[at_++];
            } else {
                ++at_;
                if (!at_end()) return wrong("text stands behind a closing quotation mark");
                return field;
            }
        }
        number_ = began;
        return wrong("a quotation mark is never closed");
    }

    void end_line() {
        if (text_.substr(at_, 2) == "\r\n") ++at_;
        ++at_;
        ++number_;
    }

    std::string_view text_;
    std::size_t at_ = 0;
    std::size_t number_ = 1;
};

}  // namespace

Result<std::vector<CsvLine>> csv_lines(std::string_view text) {
    return Reader(text).lines();
}

void add_csv_line(std::string& out, const std::vector<std::string>& fields) {
    const char* between = "";
    for (const std::string& field : fields) {
        out += between;
        between = ",";
        if (field.find_first_of(",\"\r\n") == std::string::npos) {
            out += field;
            continue;
        }
        out += '"';
        for (const char c : field) {
            if (c == '"') out += '"';
            out += c;
        }
        out += '"';
    }
    out += "\r\n";
}

std::string guarded_text(std::string_view text) {
    static constexpr std::array<std::string_view, 12> starts{"=",  "+", "-",  "@",  "\t", "\r",
                                                             "\n", "'", "＝", "＋", "－", "＠"};
    for (const auto start : starts)
        if (text.starts_with(start)) return "'" + std::string(text);
    return std::string(text);
}

std::string unguarded_text(std::string_view text) {
    return std::string(text.starts_with('\'') ? text.substr(1) : text);
}

}  // namespace cotter
