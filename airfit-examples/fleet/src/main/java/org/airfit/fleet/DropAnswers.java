package org.airfit.fleet;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.quantity.Money;
import org.airfit.working.UnitSystem;
import org.apache.spark.api.java.function.MapPartitionsFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** Judges a table of drops: a row goes in, and a row with a verdict, or as a reject, comes out. */
final class DropAnswers {

  /** The columns of an answer. */
  static final StructType SCHEMA = StructType.fromDDL("key STRING, site STRING, profile STRING,"
      + " outcome STRING, verdict STRING, atTool_bar DOUBLE, needed_bar DOUBLE, lost_bar DOUBLE,"
      + " restriction STRING, restrictionGain_bar DOUBLE, toolLimit STRING, helps STRING,"
      + " helpsBore STRING, helpsGain_bar DOUBLE, helpsEnough BOOLEAN, costAYear DECIMAL(24,4),"
      + " currency STRING, cautions ARRAY<STRING>, remarks ARRAY<STRING>, "
      + Outcome.REJECT_COLUMNS);

  private static final int KEY = 0;
  private static final int SITE = 1;
  private static final int PROFILE = 2;
  private static final int PLACE = 3;
  private static final int TOOL = 4;
  private static final int NOW = 5;
  private static final int CORRUPT = 6;

  /** How much is asked of a drop. */
  enum Depth {
    /** Verdict, pressure at the tool and biggest restriction. */
    QUICK,
    /** What would help most, what the loss costs, cautions and remarks too. */
    WHOLE
  }

  private DropAnswers() {}

  /** Puts a table into rows of seven columns. */
  static Dataset<Row> rows(InputTable table) throws WrongTableException {
    Map<String, PackedFields> packed = new LinkedHashMap<>();
    packed.put("place", DropFields.PLACE);
    packed.put("tool", DropFields.TOOL);
    return table.rows(DropFields.LABELS, packed, DropFields.NOW, DropFields.ITEM);
  }

  /** Judges such rows; what the library needs is made once for each partition. */
  static Dataset<Row> judged(
      Dataset<Row> rows, Depth depth, UnitSystem units, ToldCautions.Everywhere told) {
    return rows.mapPartitions(
        (MapPartitionsFunction<Row, Row>) partition -> {
          DropJudge judge = DropJudge.in(units);
          ToldCautions cautions = told.ofPartition();
          return new Mapped(partition, row -> answer(judge, row, depth, cautions));
        },
        Encoders.row(SCHEMA));
  }

  /** The answer to a row. */
  static Row answer(DropJudge judge, Row row, Depth depth, ToldCautions cautions) {
    Optional<Refused> unread =
        Outcome.unread(text(row, KEY), text(row, CORRUPT), DropFields.LABELS.get(KEY));
    if (unread.isPresent()) {
      return reject(row, unread.get());
    }
    return judge.judge(
        packed(row), drop -> verdict(row, drop, depth, cautions), refused -> reject(row, refused));
  }

  /** The fields of a row. */
  static DropFields.Packed packed(Row row) {
    return new DropFields.Packed(
        row.getString(PLACE),
        row.getString(TOOL),
        row.isNullAt(NOW) ? List.of() : row.getList(NOW));
  }

  private static @Nullable String text(Row row, int column) {
    return row.isNullAt(column) ? null : row.getString(column);
  }

  private static Row reject(Row row, Refused refused) {
    @Nullable Object[] cells = new @Nullable Object[SCHEMA.size()];
    cells[KEY] = text(row, KEY);
    cells[SITE] = text(row, SITE);
    cells[PROFILE] = text(row, PROFILE);
    Outcome.reject(cells, SCHEMA, refused);
    return RowFactory.create(cells);
  }

  private static Row verdict(Row row, JudgedDrop drop, Depth depth, ToldCautions cautions) {
    JudgedDrop.Restriction restriction = drop.restriction();
    @Nullable Object[] cells = new @Nullable Object[SCHEMA.size()];
    int i = 0;
    cells[i++] = text(row, KEY);
    cells[i++] = text(row, SITE);
    cells[i++] = text(row, PROFILE);
    cells[i++] = Outcome.VERDICT;
    cells[i++] = drop.verdict().word();
    cells[i++] = drop.result()
        .<@Nullable Double>fold(delivered -> delivered.atToolGauge().bar(), starved -> null);
    cells[i++] = drop.needed().bar();
    cells[i++] =
        drop.result().<@Nullable Double>fold(delivered -> delivered.lost().bar(), starved -> null);
    cells[i++] = restriction.name();
    cells[i++] = restriction.gainBar().orElse(null);
    cells[i++] = drop.limit();
    if (depth == Depth.WHOLE) {
      whole(cells, i, drop, cautions);
    }
    return RowFactory.create(cells);
  }

  private static void whole(
      @Nullable Object[] cells, int from, JudgedDrop drop, ToldCautions cautions) {
    Optional<JudgedDrop.Help> help = drop.help();
    Optional<Money> cost = drop.cost();
    int i = from;
    cells[i++] = help.map(JudgedDrop.Help::element).orElse(null);
    cells[i++] = help.map(JudgedDrop.Help::bore).orElse(null);
    cells[i++] = help.map(JudgedDrop.Help::gainBar).orElse(null);
    cells[i++] = help.map(JudgedDrop.Help::isEnough).orElse(null);
    cells[i++] = cost.<BigDecimal>map(JudgedDrop::rounded).orElse(null);
    cells[i++] = cost.map(Money::currency).orElse(null);
    cells[i++] = cautions.titles(drop.cautions());
    cells[i] = drop.remarks().toArray(String[]::new);
  }
}
