// The table without its drawing: cursor, choice, scrolling, sorting, columns, pages.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "app/desk/list.h"
#include "app/ui/table.h"

using namespace cotter;

namespace {

TableModel table_of(std::size_t rows, float page = 10) {
    TableModel model;
    model.set_page(page);
    model.start(rows);
    return model;
}

TableRow row_of(const std::string& name, double size) {
    TableRow row;
    row.key = name;
    row.cells = {name, TableCell(fmt::format("{} kg", size), size)};
    return row;
}

std::string names_of(const KeptRows& rows) {
    std::string out;
    for (std::size_t i = 0; i < rows.size(); ++i) out += rows.row(i)->key + " ";
    return out;
}

}  // namespace

TEST_CASE("table: the cursor walks within the rows, and stays in sight") {
    TableModel model = table_of(100'000);
    CHECK(model.press(TableKey::up, false, false));
    CHECK(model.cursor() == 0);
    model.press(TableKey::down, false, false);
    CHECK(model.cursor() == 1);
    CHECK(model.top() == 0);
    model.press(TableKey::page_down, false, false);
    CHECK(model.cursor() == 10);
    CHECK(model.top() == 1);
    model.press(TableKey::end, false, false);
    CHECK(model.cursor() == 99'999);
    CHECK(model.seen().from == 99'990);
    CHECK(model.seen().to == 100'000);
    model.press(TableKey::page_up, false, false);
    CHECK(model.cursor() == 99'990);
    model.press(TableKey::home, false, false);
    CHECK(model.seen().from == 0);
    CHECK(model.seen().to == 10);
}

TEST_CASE("table: without rows no key does anything") {
    TableModel model = table_of(0);
    CHECK_FALSE(model.press(TableKey::down, false, false));
    CHECK_FALSE(model.press(TableKey::space, false, false));
    CHECK(model.seen().to == 0);
    CHECK(model.chosen_count() == 0);
}

TEST_CASE("table: rows are chosen by click, Ctrl, Shift, Space and Ctrl+A") {
    TableModel model = table_of(20);
    model.click(3, false, false);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{3});
    model.click(7, false, true);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{3, 7});
    model.click(3, false, true);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{7});
    model.click(5, false, false);
    model.click(8, true, false);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{5, 6, 7, 8});
    model.press(TableKey::up, true, false);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{5, 6, 7});
    model.press(TableKey::all, false, true);
    CHECK(model.chosen_count() == 20);
    model.press(TableKey::space, false, false);
    CHECK(model.chosen_count() == 19);
    CHECK_FALSE(model.chosen(7));
    CHECK(model.chosen_rows(8) == std::vector<std::size_t>{0, 1, 2, 3, 4, 5, 6, 8});
    model.start(20);
    CHECK(model.chosen_count() == 0);
}

TEST_CASE("table: fewer of the same rows keep what still means something") {
    TableModel model = table_of(20);
    model.click(2, false, false);
    model.click(15, false, true);
    model.resize(10);
    CHECK(model.cursor() == 9);
    CHECK(model.chosen_rows(9) == std::vector<std::size_t>{2});
}

TEST_CASE("table: kept rows are sorted by figures where there are any, and narrowed down by words") {
    KeptRows rows({row_of("Birch", 9), row_of("alder", 10), row_of("Cedar", 9)});
    rows.sort(TableSort{0, false});
    CHECK(names_of(rows) == "alder Birch Cedar ");
    rows.sort(TableSort{1, false});
    CHECK(names_of(rows) == "Birch Cedar alder ");  // 9 before 10, equal ones as they came
    rows.sort(TableSort{1, true});
    CHECK(names_of(rows) == "alder Birch Cedar ");
    rows.narrow("9 KG");
    CHECK(names_of(rows) == "Birch Cedar ");
    rows.narrow("9 ced");
    CHECK(names_of(rows) == "Cedar ");
    CHECK(rows.all() == 3);
    rows.narrow("");
    CHECK(rows.size() == 3);
    CHECK(rows.row(3) == nullptr);
}

TEST_CASE("table: columns that do not fit are left out from the right, the first one never") {
    std::vector<TableColumn> columns{{"a", "A", 1, 100}, {"b", "B", 3, 100}, {"c", "C", 1, 100}};
    auto widths = column_widths(columns, 400);
    CHECK(widths[0] == doctest::Approx(120));
    CHECK(widths[1] == doctest::Approx(160));
    CHECK(widths[0] + widths[1] + widths[2] == doctest::Approx(400));
    widths = column_widths(columns, 250);
    CHECK(widths[2] == 0);
    CHECK(widths[0] + widths[1] == doctest::Approx(250));
    columns[0].idle = true;
    CHECK(column_widths(columns, 250)[0] == 0);
    columns[0].idle = false;
    columns[1].shown = false;
    CHECK(column_widths(columns, 250)[1] == 0);
    CHECK(column_widths(columns, 60)[0] == doctest::Approx(60));
}

TEST_CASE("table: short columns get what they hold, long ones are cut to one length, the rest goes by the shares") {
    const std::vector<TableColumn> columns{{"a", "A", 0, 200}, {"b", "B", 3, 100}, {"c", "C", 1, 100}};
    auto widths = column_widths(columns, 600, {60, 900, 200});
    CHECK(widths[0] == doctest::Approx(60));  // less than its least: it holds no more
    CHECK(widths[2] == doctest::Approx(200));
    CHECK(widths[1] == doctest::Approx(340).epsilon(0.01));
    widths = column_widths(columns, 600, {60, 900, 900});
    CHECK(widths[1] == doctest::Approx(270).epsilon(0.01));
    CHECK(widths[2] == doctest::Approx(270).epsilon(0.01));
    widths = column_widths(columns, 600, {60, 100, 100});
    CHECK(widths[0] == doctest::Approx(60));
    CHECK(widths[1] == doctest::Approx(355));
    CHECK(widths[2] == doctest::Approx(185));
    widths = column_widths(columns, 450, {900, 900, 900});
    for (const float width : widths) CHECK(width >= 100);
    CHECK(widths[0] >= 200);
    CHECK(widths[0] + widths[1] + widths[2] == doctest::Approx(450).epsilon(0.01));
}

TEST_CASE("table: its height ends with a whole row") {
    CHECK(whole_rows(kTableHead + 3 * kTableRow) == kTableHead + 3 * kTableRow);
    CHECK(whole_rows(kTableHead + 3.9F * kTableRow) == kTableHead + 3 * kTableRow);
    CHECK(whole_rows(10) == kTableHead + kTableRow);
}

TEST_CASE("table: what columns hold is measured anew with other rows, and only grows") {
    TableModel model = table_of(10);
    REQUIRE(model.wants_measure(1));
    model.measured({50, 80}, 1);
    CHECK_FALSE(model.wants_measure(1));
    model.resize(10);
    CHECK_FALSE(model.wants_measure(1));
    model.resize(12);
    CHECK(model.wants_measure(1));
    model.measured({60, 40}, 1);
    CHECK(model.holds() == std::vector<float>{60, 80});
    model.start(12);
    CHECK(model.wants_measure(1));
}

TEST_CASE("table: with other fonts what columns hold is measured from nothing") {
    TableModel model = table_of(10);
    model.measured({50, 80}, 1);
    REQUIRE(model.wants_measure(2));
    model.measured({40, 90}, 2);
    CHECK(model.holds() == std::vector<float>{40, 90});
    CHECK_FALSE(model.wants_measure(2));
}

TEST_CASE("table: of a long list only the pages near the last one looked at are held") {
    desk::PagedRows rows;
    rows.start(100'000);
    CHECK(rows.size() == 100'000);
    CHECK(rows.row(5) == nullptr);
    CHECK(rows.missing({95, 205}) == std::vector<std::size_t>{0, 1, 2});
    for (std::size_t page = 0; page < 1000; ++page) {
        std::vector<TableRow> some(desk::PagedRows::kPage, row_of(fmt::format("page {}", page), 1));
        rows.put(page, std::move(some));
    }
    CHECK(rows.row(99'950)->key == "page 999");
    CHECK(rows.row(5) == nullptr);
    rows.put(0, {row_of("again", 1)});
    CHECK(rows.row(0)->key == "again");
    CHECK(rows.missing({0, 1}).empty());
    CHECK(rows.missing({100'000, 100'010}).empty());
}
