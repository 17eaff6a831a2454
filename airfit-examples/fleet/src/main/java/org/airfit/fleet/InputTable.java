package org.airfit.fleet;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.apache.spark.sql.AnalysisException;
import org.apache.spark.sql.Dataset;
import org.apache.spark.sql.Row;
import org.apache.spark.sql.SparkSession;
import org.apache.spark.sql.types.ArrayType;
import org.apache.spark.sql.types.BooleanType;
import org.apache.spark.sql.types.DataType;
import org.apache.spark.sql.types.NumericType;
import org.apache.spark.sql.types.StringType;
import org.apache.spark.sql.types.StructField;
import org.apache.spark.sql.types.StructType;

/**
 * A table as it comes, Parquet or CSV, its columns flat ("supply.pressure", "now[2].bore") or nested; put into rows of
 * few columns, in which its fields are packed.
 */
final class InputTable {

  /** The line of a CSV file that has not as many cells as its heading. */
  static final String CORRUPT = "corrupt";

  /** So many items of a list may have columns of their own; our own choice. */
  private static final int MOST_ITEMS = 64;

  private static final Pattern ITEM = Pattern.compile("(\\w+)\\[([0-9]{1,2})\\]\\.(.+)");

  private final Dataset<Row> table;
  private final Map<String, String> columns = new LinkedHashMap<>();
  private final Map<String, DataType> types = new LinkedHashMap<>();

  private InputTable(Dataset<Row> table) {
    this.table = table;
    flatten("", "", table.schema());
  }

  /**
   * Opens a table.
   *
   * @param spark the session
   * @param path a file or folder
   * @param format "csv" or "parquet"
   */
  static InputTable open(SparkSession spark, String path, String format)
      throws WrongTableException {
    try {
      return new InputTable(
          format.equals("csv") ? csv(spark, path) : spark.read().parquet(path));
    } catch (Exception e) { // Scala does not declare what it throws
      if (!(e instanceof AnalysisException)) {
        throw e;
      }
      throw new WrongTableException(path + " cannot be read as " + format + ": "
          + String.valueOf(e.getMessage()).lines().findFirst().orElse(""));
    }
  }

  static InputTable of(Dataset<Row> table) {
    return new InputTable(table);
  }

  /** All cells are texts; a line with too few or too many of them is kept whole. */
  private static Dataset<Row> csv(SparkSession spark, String path) throws WrongTableException {
    List<Row> first = spark.read().textFile(path).toDF().takeAsList(1);
    if (first.isEmpty()) {
      throw new WrongTableException(path + " is empty; its first line tells the columns");
    }
    String heading = first.get(0).getString(0);
    String separator = heading.indexOf(',') < 0 && heading.indexOf(';') >= 0 ? ";" : ",";
    Map<String, String> options = Map.of(
        "header", "true",
        "sep", separator,
        "escape", "\"",
        "enforceSchema", "false",
        "mode", "PERMISSIVE",
        "columnNameOfCorruptRecord", CORRUPT);
    StructType schema = spark.read().options(options).csv(path).schema();
    return spark.read().options(options).schema(schema.add(CORRUPT, "string")).csv(path);
  }

  private void flatten(String path, String sql, StructType schema) {
    for (StructField field : schema.fields()) {
      String name = path + field.name();
      String column = sql + "`" + field.name().replace("`", "``") + "`";
      if (field.dataType() instanceof StructType inner) {
        flatten(name + ".", column + ".", inner);
      } else {
        columns.put(name, column);
        types.put(name, field.dataType());
      }
    }
  }

  /**
   * Puts the fields together.
   *
   * @param labels columns that stay as they are, the key first
   * @param packed the fields that go into one column, by its name
   * @param list the field that is a list of items; empty for none
   * @param items the fields of an item
   * @return a table with the labels, the packed columns, the list as an array of packed items, and {@link #CORRUPT}
   */
  Dataset<Row> rows(
      List<String> labels, Map<String, PackedFields> packed, String list, PackedFields items)
      throws WrongTableException {
    Map<Integer, Map<String, String>> numbered = numbered(list);
    refuseUnknown(labels, packed, list, items);
    if (!columns.containsKey(labels.get(0))) {
      throw new WrongTableException(
          "the column " + labels.get(0) + " is missing; it tells the rows apart");
    }
    List<String> select = new ArrayList<>();
    for (String label : labels) {
      String column = columns.get(label);
      select.add(
          column == null
              ? "cast(null as string) as `" + label + "`"
              : "cast(" + column + " as string) as `" + label + "`");
    }
    packed.forEach((name, fields) ->
        select.add(fields.sql(path -> columns.getOrDefault(path, "")) + " as `" + name + "`"));
    if (!list.isEmpty()) {
      select.add(list(list, items, numbered) + " as `" + list + "`");
    }
    select.add((columns.containsKey(CORRUPT) ? columns.get(CORRUPT) : "cast(null as string)")
        + " as " + CORRUPT);
    return table.selectExpr(select.toArray(String[]::new));
  }

  private String list(String list, PackedFields items, Map<Integer, Map<String, String>> numbered) {
    if (types.get(list) instanceof ArrayType array) {
      Set<String> told = Set.of(((StructType) array.elementType()).fieldNames());
      return "transform(" + columns.get(list) + ", x -> "
          + items.sql(path -> told.contains(path) ? "x.`" + path + "`" : "") + ")";
    }
    int last = numbered.keySet().stream().mapToInt(Integer::intValue).max().orElse(0);
    List<String> each = new ArrayList<>();
    for (int i = 1; i <= last; i++) {
      Map<String, String> of = numbered.getOrDefault(i, Map.of());
      each.add(items.sql(path -> of.getOrDefault(path, "")));
    }
    return each.isEmpty()
        ? "cast(array() as array<string>)"
        : "array(" + String.join(", ", each) + ")";
  }

  /** The columns of flat items, by number and field. */
  private Map<Integer, Map<String, String>> numbered(String list) throws WrongTableException {
    Map<Integer, Map<String, String>> numbered = new TreeMap<>();
    for (Map.Entry<String, String> column : columns.entrySet()) {
      Matcher item = ITEM.matcher(column.getKey());
      if (item.matches() && item.group(1).equals(list)) {
        int number = Integer.parseInt(item.group(2));
        if (number < 1 || number > MOST_ITEMS) {
          throw new WrongTableException(
              "column " + column.getKey() + ": items are counted from 1 to " + MOST_ITEMS);
        }
        numbered
            .computeIfAbsent(number, at -> new LinkedHashMap<>())
            .put(item.group(3), column.getValue());
      }
    }
    return numbered;
  }

  private void refuseUnknown(
      List<String> labels, Map<String, PackedFields> packed, String list, PackedFields items)
      throws WrongTableException {
    List<String> known = new ArrayList<>(labels);
    packed.values().forEach(fields -> known.addAll(fields.paths()));
    if (!list.isEmpty()) {
      items.paths().forEach(path -> known.add(list + "[1]." + path));
    }
    for (Map.Entry<String, DataType> column : types.entrySet()) {
      String name = column.getKey();
      if (name.startsWith("//") || name.equals(CORRUPT)) {
        continue;
      }
      if (name.equals(list) && column.getValue() instanceof ArrayType array) {
        refuseUnknownItems(name, array, items);
        continue;
      }
      Matcher item = ITEM.matcher(name);
      String asked = item.matches() ? item.group(1) + "[1]." + item.group(3) : name;
      if (!known.contains(asked)) {
        throw new WrongTableException("column " + name + " is none here; accepted: "
            + String.join(", ", known) + ", and // in front of a name for one that is passed over");
      }
      boolean isFree = labels.contains(name)
          || packed.values().stream().anyMatch(fields -> isFree(fields, name))
          || (item.matches() && isFree(items, item.group(3)));
      requireText(name, column.getValue(), isFree);
    }
  }

  private static boolean isFree(PackedFields fields, String path) {
    return fields.numbers().contains(path) || fields.truths().contains(path);
  }

  private void refuseUnknownItems(String list, ArrayType array, PackedFields items)
      throws WrongTableException {
    if (!(array.elementType() instanceof StructType item)) {
      throw new WrongTableException("column " + list + " is a list of "
          + array.elementType().simpleString() + "; accepted: a list of objects with "
          + String.join(", ", items.paths()));
    }
    for (StructField field : item.fields()) {
      if (!items.paths().contains(field.name())) {
        throw new WrongTableException("field " + field.name() + " of column " + list
            + " is none here; accepted: " + String.join(", ", items.paths()));
      }
      requireText(list + "." + field.name(), field.dataType(), isFree(items, field.name()));
    }
  }

  /** A value is a text with its unit; only what has no unit may be a number. */
  private static void requireText(String name, DataType type, boolean isFree)
      throws WrongTableException {
    boolean isPlain = type instanceof StringType
        || (isFree && (type instanceof NumericType || type instanceof BooleanType));
    if (!isPlain) {
      throw new WrongTableException("column " + name + " is of type "
          + type.simpleString().toLowerCase(Locale.ROOT)
          + "; a value is a text with its unit, such as \"90 psig\"");
    }
  }

  @Override
  public String toString() {
    return columns.keySet().stream().collect(Collectors.joining(", "));
  }
}
