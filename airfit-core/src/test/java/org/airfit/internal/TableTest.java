package org.airfit.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatNullPointerException;

import java.util.List;
import org.airfit.internal.Table.Row;
import org.junit.jupiter.api.Test;

class TableTest {

  @Test
  void cells_stand_under_the_names_of_their_columns() {
    List<Row> rows = Table.of("size,bore_mm,remark\n1/4,6.5,\n3/8,8.5,often seen\n");
    assertThat(rows).hasSize(2);
    Row first = rows.get(0);
    assertThat(first.number()).isEqualTo(2);
    assertThat(first.text("size")).isEqualTo("1/4");
    assertThat(first.number("bore_mm")).isEqualTo(6.5);
    assertThat(first.text("remark")).isEmpty();
    assertThat(first.has("bore_mm")).isTrue();
    assertThat(first.has("bore_in")).isFalse();
    assertThat(rows.get(1).number()).isEqualTo(3);
    assertThat(rows.get(1).text("remark")).isEqualTo("often seen");
  }

  @Test
  void an_empty_cell_is_no_number() {
    Row row = Table.of("a,b\n,2.5").get(0);
    assertThat(row.optional("a")).isEmpty();
    assertThat(row.optional("b")).contains(2.5);
  }

  @Test
  void a_column_that_is_not_there_is_named() {
    Row row = Table.of("a\n1\n").get(0);
    assertThatNullPointerException().isThrownBy(() -> row.text("weight")).withMessage("weight");
  }

  /** RFC 4180: quoted cells hold commas, line ends, and quotation marks written twice. */
  @Test
  void quoted_cells_hold_commas_line_ends_and_quotation_marks() {
    List<Row> rows = Table.of("a,b\n\"one, two\",\"1/2\"\" pipe\"\n\"two\nlines\",\"\"\n");
    assertThat(rows.get(0).text("a")).isEqualTo("one, two");
    assertThat(rows.get(0).text("b")).isEqualTo("1/2\" pipe");
    assertThat(rows.get(1).text("a")).isEqualTo("two\nlines");
    assertThat(rows.get(1).text("b")).isEmpty();
  }

  @Test
  void a_quotation_mark_may_be_the_last_sign_of_the_text() {
    assertThat(Table.of("a,b\n1,\"x\"").get(0).text("b")).isEqualTo("x");
    assertThat(Table.of("a,b\n1,\"x\"\"\"").get(0).text("b")).isEqualTo("x\"");
  }

  @Test
  void line_ends_of_whatever_system_and_a_byte_order_mark_make_no_difference() {
    List<Row> plain = Table.of("a,b\n1,2\n3,4\n");
    assertThat(Table.of("a,b\r\n1,2\r\n3,4\r\n")).isEqualTo(plain);
    assertThat(Table.of("\uFEFFa,b\n1,2\n3,4\n")).isEqualTo(plain);
    assertThat(Table.of("a,b\n1,2\n3,4")).as("last line without an end").isEqualTo(plain);
  }

  @Test
  void a_last_line_without_an_end_may_end_in_an_empty_cell() {
    Row row = Table.of("a,b\n1,").get(0);
    assertThat(row.text("a")).isEqualTo("1");
    assertThat(row.text("b")).isEmpty();
    assertThat(Table.of("a\n1").get(0).text("a")).isEqualTo("1");
  }

  @Test
  void rows_without_anything_in_them_are_left_out_but_count() {
    List<Row> rows = Table.of("a,b\n\n , \n1,2\n,\n3,4\n");
    assertThat(rows).extracting(Row::number).containsExactly(4, 6);
    assertThat(Table.of("a,b\n")).isEmpty();
    assertThat(Table.of("a,b")).isEmpty();
  }

  @Test
  void a_table_without_a_heading_is_refused() {
    for (String text : new String[] {"", "\n1,2\n", " , \n1,2\n", "\uFEFF"}) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Table.of(text))
          .withMessage("table must begin with a heading, was empty");
    }
  }

  @Test
  void a_column_named_twice_is_refused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Table.of("a,b,c,b\n1,2,3,4\n"))
        .withMessage("row 1 must name each column once, was \"b\" twice");
  }

  @Test
  void a_row_of_another_width_is_refused_with_its_number() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Table.of("a,b\n1,2\n\n1,2,3\n"))
        .withMessage("row 4 must have 2 cells as the heading has, was 3;"
            + " put a cell with a comma in quotation marks");
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Table.of("a,b\n1\n"))
        .withMessageStartingWith("row 2 must have 2 cells as the heading has, was 1;");
  }

  @Test
  void an_open_quotation_is_refused_with_the_row_it_began_in() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Table.of("a,b\n1,2\n3,\"4\n5,6\n"))
        .withMessage("row 3 must close its quotation marks, was open to the end of the table");
  }

  @Test
  void a_table_of_the_cores_own_is_read_from_beside_its_class() {
    assertThatNullPointerException()
        .isThrownBy(() -> Table.read(TableTest.class, "no_such_table.csv"))
        .withMessage("no_such_table.csv");
    List<Row> rows = Table.read(TableTest.class, "water_saturation.csv");
    assertThat(rows).hasSizeGreaterThan(3);
    assertThat(rows.get(0).has("pressure_pa")).isTrue();
  }
}
