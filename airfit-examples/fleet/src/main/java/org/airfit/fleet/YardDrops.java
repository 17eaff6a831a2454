package org.airfit.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/**
 * Drops of an invented chain of boat yards. A row follows from the seed and its number alone, so the same seed gives
 * the same table, however many machines write it. All numbers are made up.
 */
final class YardDrops {

  /** The items of a drop: pipe, filter regulator or filter, coupling, hose. */
  private static final int ITEMS = 4;

  /** So many drops a yard has about. */
  private static final int OF_A_YARD = 400;

  /** One row of so many has a slip. */
  private static final int ONE_SLIP_OF = 150;

  private static final List<String> SUPPLIES =
      List.of("90 psig", "100 psig", "95 to 115 psig", "110 psig", "7 bar(g)", "8 bar(g)");

  private record Tool(String name, String air, String needs, String notAbove) {}

  private static final List<Tool> TOOLS = List.of(
      new Tool("orbital sander", "12 scfm", "85 psig", "110 psig"),
      new Tool("orbital sander", "16 scfm", "90 psig", "110 psig"),
      new Tool("ratchet", "6 scfm", "90 psig", "100 psig"),
      new Tool("drill", "9 scfm", "90 psig", "120 psig"),
      new Tool("caulking gun", "2 scfm", "60 psig", ""),
      new Tool("spray gun", "11 scfm", "45 psig", "100 psig"),
      new Tool("angle grinder", "20 scfm", "90 psig", "125 psig"),
      new Tool("needle scaler", "8 L/s ANR", "6.2 bar(g)", "8 bar(g)"),
      new Tool("impact wrench", "14 L/s ANR", "6.2 bar(g)", "10 bar(g)"));

  private record Profile(String name, String narrow, String wide) {}

  private static final List<Profile> PROFILES = List.of(
      new Profile("heron", "Cv 0.9, xT 0.7", "Cv 1.6, xT 0.7"),
      new Profile("curlew", "C 3.5 dm3/(s bar), b 0.25", "C 6 dm3/(s bar), b 0.3"),
      new Profile("plover", "C 2.2 dm3/(s bar), b 0.2", "C 4 dm3/(s bar), b 0.25"));

  private static final List<String> WALLS =
      List.of("smooth rubber hose", "smooth rubber hose", "smooth plastic");

  private static final List<String> BORES =
      List.of("1/4 in", "5/16 in", "3/8 in", "3/8 in", "1/2 in");

  private static final List<String> PIPES = List.of("15.8 mm", "20.9 mm", "26.6 mm");

  /** The columns, flat. */
  static final List<String> COLUMNS = columns();

  private YardDrops() {}

  private static List<String> columns() {
    List<String> columns = new ArrayList<>(DropFields.LABELS);
    columns.addAll(List.of(
        "supply.pressure",
        "supply.altitude",
        "tool.name",
        "tool.air",
        "tool.pressure",
        "tool.notAbove",
        "year.hours",
        "year.electricity",
        "year.flow",
        "conditions.medium"));
    for (int i = 1; i <= ITEMS; i++) {
      for (String field :
          List.of("name", "bore", "length", "wall", "fittings", "capacity", "set")) {
        columns.add("now[" + i + "]." + field);
      }
    }
    return List.copyOf(columns);
  }

  private static StructType schema() {
    StructType schema = new StructType();
    for (String column : COLUMNS) {
      schema = schema.add(column, "string");
    }
    return schema;
  }

  /** A table with flat columns. */
  static Dataset<Row> flat(SparkSession spark, long rows, long seed, int partitions) {
    return spark
        .range(0, rows, 1, partitions)
        .map((MapFunction<Long, Row>) number -> row(values(seed, number)), Encoders.row(schema()));
  }

  /** The same table with objects: supply, tool, year, conditions, and a list of what is connected. */
  static Dataset<Row> nested(SparkSession spark, long rows, long seed, int partitions) {
    List<String> select = new ArrayList<>(DropFields.LABELS);
    for (String object : List.of("supply", "tool", "year", "conditions")) {
      select.add(COLUMNS.stream()
          .filter(column -> column.startsWith(object + "."))
          .map(column -> "'" + column.substring(object.length() + 1) + "', `" + column + "`")
          .collect(Collectors.joining(", ", "named_struct(", ") as " + object)));
    }
    List<String> items = new ArrayList<>();
    for (int i = 1; i <= ITEMS; i++) {
      String item = "now[" + i + "].";
      items.add(COLUMNS.stream()
          .filter(column -> column.startsWith(item))
          .map(column -> "'" + column.substring(item.length()) + "', `" + column + "`")
          .collect(Collectors.joining(", ", "named_struct(", ")")));
    }
    select.add("array(" + String.join(", ", items) + ") as now");
    return flat(spark, rows, seed, partitions).selectExpr(select.toArray(String[]::new));
  }

  private static Row row(Map<String, String> values) {
    @Nullable Object[] cells = new @Nullable Object[COLUMNS.size()];
    for (int i = 0; i < cells.length; i++) {
      cells[i] = values.get(COLUMNS.get(i));
    }
    return RowFactory.create(cells);
  }

  /** What stands in a row; a field that is not told is missing. */
  static Map<String, String> values(long seed, long number) {
    SplittableRandom random = new SplittableRandom(seed * 0x9E37_79B9_7F4A_7C15L + number);
    long yard = number / OF_A_YARD;
    SplittableRandom ofYard = new SplittableRandom(seed - 31 * yard - 7);
    Map<String, String> row = new LinkedHashMap<>();
    row.put("key", String.format(Locale.ROOT, "D%09d", number));
    row.put("site", String.format(Locale.ROOT, "yard %05d", yard));
    yard(row, ofYard);
    double wear = ofYard.nextDouble(); // an old yard has narrow pipes and hoses
    Tool tool = TOOLS.get(random.nextInt(TOOLS.size()));
    row.put("tool.name", tool.name());
    row.put("tool.air", tool.air());
    row.put("tool.pressure", tool.needs());
    put(row, "tool.notAbove", random.nextInt(3) == 0 ? "" : tool.notAbove());
    Profile profile = PROFILES.get(
        random.nextDouble() < 0.6
            ? ofYard.nextInt(PROFILES.size())
            : random.nextInt(PROFILES.size()));
    row.put("profile", profile.name());
    boolean isOld = random.nextDouble() < 0.2 + 0.5 * wear;
    row.put("now[1].name", "pipe");
    row.put("now[1].bore", PIPES.get(isOld ? 0 : random.nextInt(PIPES.size())));
    row.put("now[1].length", 5 * (1 + random.nextInt(40)) + " ft");
    row.put("now[1].wall", isOld ? "galvanized" : "commercial steel");
    row.put("now[1].fittings", String.valueOf(random.nextInt(9)));
    if (random.nextInt(3) == 0) {
      row.put("now[2].name", "filter regulator");
      row.put("now[2].set", random.nextInt(5) == 0 ? "80 psig" : "90 psig");
      row.put("now[2].capacity", "C 7 dm3/(s bar), b 0.3");
    } else {
      row.put("now[2].name", "filter");
      row.put("now[2].capacity", isOld ? "C 4 dm3/(s bar), b 0.3" : "C 9 dm3/(s bar), b 0.4");
    }
    row.put("now[3].name", "coupling");
    row.put("now[3].capacity", random.nextInt(3) == 0 ? profile.wide() : profile.narrow());
    row.put("now[4].name", "hose");
    row.put("now[4].bore", BORES.get(isOld ? random.nextInt(2) : random.nextInt(BORES.size())));
    row.put("now[4].length", (random.nextInt(4) == 0 ? 100 : 5 * (2 + random.nextInt(10))) + " ft");
    row.put("now[4].wall", WALLS.get(random.nextInt(WALLS.size())));
    if (random.nextInt(ONE_SLIP_OF) == 0) {
      slip(row, random.nextInt(10));
    }
    return row;
  }

  private static void yard(Map<String, String> row, SplittableRandom random) {
    row.put("supply.pressure", SUPPLIES.get(random.nextInt(SUPPLIES.size())));
    int altitude = random.nextInt(4) == 0 ? 500 * (1 + random.nextInt(10)) : 0;
    put(row, "supply.altitude", altitude == 0 ? "" : altitude + " ft");
    if (random.nextInt(5) > 0) {
      row.put("year.hours", String.valueOf(2000 + 250 * random.nextInt(9)));
      row.put("year.electricity", "0." + (11 + random.nextInt(15)) + " USD");
      row.put("year.flow", 2 + random.nextInt(8) + " scfm");
    }
  }

  private static void put(Map<String, String> row, String field, String text) {
    if (!text.isEmpty()) {
      row.put(field, text);
    }
  }

  /** What clerks do: a unit is missing, a comma stands for a point, a word is misspelt, a cell is empty. */
  private static void slip(Map<String, String> row, int which) {
    switch (which) {
      case 0 -> row.put("supply.pressure", "100");
      case 1 -> row.put("tool.air", "12 cubic feet");
      case 2 -> row.put("now[4].length", "-25 ft");
      case 3 -> row.put("now[1].wall", "galvanised irn");
      case 4 -> row.remove("tool.pressure");
      case 5 -> row.put("now[4].bore", "3/8");
      case 6 -> row.put("now[3].capacity", "Cv 1,4 or so");
      case 7 -> row.put("conditions.medium", "nitrogen");
      case 8 -> row.put("now[2].name", "hose");
      default -> row.put("key", " ");
    }
  }
}
