package org.airfit.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.airfit.plug.DemoProfiles;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.apache.spark.api.java.function.MapFunction;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Encoders;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.RowFactory;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.StructType;
import org.jspecify.annotations.Nullable;

/** Readings of plugs, and a price list, of the invented chain of boat yards. All numbers are made up. */
final class YardPlugs {

  private static final int PARTITIONS = 2;
  private static final int OF_A_YARD = 50;

  private static final List<String> READINGS = readingColumns();

  private static final List<String> PRICES = List.of(
      "id",
      "kind",
      "name",
      "price",
      "rated",
      "material",
      "takes",
      "profile",
      "end",
      "otherEnd",
      "capacity",
      "droop",
      "atFlow",
      "hose",
      "bore",
      "length",
      "wall",
      "outsideDiameter",
      "coldest",
      "hottest");

  private YardPlugs() {}

  private static List<String> readingColumns() {
    List<String> columns =
        new ArrayList<>(List.of("key", "site", "atHand.instrument", "atHand.noNearCopies"));
    Stream.of(Dimension.values()).forEach(each -> columns.add("atHand.readings." + each.label()));
    return List.copyOf(columns);
  }

  /** A table of readings. */
  static Dataset<Row> readings(SparkSession spark, long rows, long seed) {
    return table(spark, rows, READINGS, number -> reading(seed, number));
  }

  /** A price list. */
  static Dataset<Row> prices(SparkSession spark, long rows, long seed) {
    return table(spark, rows, PRICES, number -> article(seed, number));
  }

  private interface Rows extends java.io.Serializable {
    Map<String, String> row(long number);
  }

  private static Dataset<Row> table(
      SparkSession spark, long rows, List<String> columns, Rows values) {
    StructType schema = new StructType();
    for (String column : columns) {
      schema = schema.add(column, "string");
    }
    return spark
        .range(0, rows, 1, PARTITIONS)
        .map(
            (MapFunction<Long, Row>) number -> {
              Map<String, String> row = values.row(number);
              @Nullable Object[] cells = new @Nullable Object[columns.size()];
              for (int i = 0; i < cells.length; i++) {
                cells[i] = row.get(columns.get(i));
              }
              return RowFactory.create(cells);
            },
            Encoders.row(schema));
  }

  private static SplittableRandom random(long seed, long number) {
    return new SplittableRandom(seed * 0x9E37_79B9_7F4A_7C15L + number);
  }

  /** A plug of one of the demo profiles, a few of its sizes read with the spread of a caliper. */
  private static Map<String, String> reading(long seed, long number) {
    SplittableRandom random = random(seed, number);
    Map<String, String> row = new LinkedHashMap<>();
    row.put("key", String.format(Locale.ROOT, "P%07d", number));
    row.put("site", String.format(Locale.ROOT, "yard %05d", number / OF_A_YARD));
    row.put("atHand.instrument", "digital caliper 0.01 mm");
    row.put("atHand.noNearCopies", random.nextInt(4) > 0 ? "true" : "");
    List<PlugProfile> profiles = DemoProfiles.birds().profiles();
    PlugProfile profile = profiles.get(random.nextInt(profiles.size()));
    for (Dimension dimension : Dimension.values()) {
      if (random.nextInt(5) > 0 || dimension == Dimension.TIP_DIAMETER) {
        profile
            .spread(dimension)
            .ifPresent(size -> row.put(
                "atHand.readings." + dimension.label(),
                String.format(
                    Locale.ROOT,
                    "%.2f mm",
                    size.nominal().millimetres() + 0.02 * (random.nextDouble() - 0.5))));
      }
    }
    if (random.nextInt(60) == 0) {
      row.put("atHand.readings.tip diameter", random.nextBoolean() ? "11.9" : "about 12 mm");
    }
    return row;
  }

  /** A row of a price list; some lack what a choice asks for, some hold a slip. */
  private static Map<String, String> article(long seed, long number) {
    SplittableRandom random = random(seed, number);
    Map<String, String> row = new LinkedHashMap<>();
    String size = List.of("1/4", "3/8", "1/2").get(random.nextInt(3));
    List<PlugProfile> profiles = DemoProfiles.birds().profiles();
    String profile = profiles.get(random.nextInt(profiles.size())).id();
    row.put("id", String.format(Locale.ROOT, "A%06d", number));
    row.put("price", random.nextInt(20) == 0 ? "" : random.nextInt(90) + ".50");
    row.put("rated", random.nextInt(12) == 0 ? "" : 150 + 50 * random.nextInt(4) + " psig");
    row.put("material", random.nextInt(3) == 0 ? "" : "steel");
    row.put("end", size + " NPT male");
    if (random.nextBoolean()) {
      row.put("coldest", "-10 °C");
      row.put("hottest", "70 °C");
    }
    switch (random.nextInt(4)) {
      case 0 -> {
        row.put("kind", "socket");
        row.put("name", "Socket " + size);
        row.put("takes", profile);
        row.put("capacity", random.nextBoolean() ? "Cv 1.4" : "C 6 dm3/(s bar), b 0.3");
      }
      case 1 -> {
        row.put("kind", "plug");
        row.put("name", "Plug " + size);
        row.put("profile", profile);
      }
      case 2 -> {
        row.put("kind", "hose");
        row.put("name", "Hose " + size);
        row.put("hose", size + " in");
        row.put("bore", size + " in");
        row.put("length", 25 * (1 + random.nextInt(4)) + " ft");
        row.put("wall", "smooth rubber hose");
        row.put("outsideDiameter", random.nextBoolean() ? "" : "16 mm");
      }
      default -> {
        row.put("kind", "regulator");
        row.put("name", "Regulator " + size);
        row.put("capacity", "80 scfm at 100 psig, 10 psi drop");
        row.put("droop", random.nextBoolean() ? "6 psi" : "");
        row.put("atFlow", row.get("droop").isEmpty() ? "" : "40 scfm");
      }
    }
    switch (random.nextInt(80)) {
      case 0 -> row.put("rated", "300");
      case 1 -> row.put("end", "3/8 flare");
      case 2 -> row.put("kind", "sokket");
      case 3 -> row.put("id", "A000001");
      default -> {
        // no slip
      }
    }
    return row;
  }
}
