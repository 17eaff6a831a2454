package org.airfit.counter;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.airfit.counter.stock.Stock;
import org.airfit.files.CatalogueFile;
import org.airfit.files.CatalogueShelf;
import org.airfit.files.Csv;
import org.airfit.files.Document;
import org.airfit.files.Json;
import org.airfit.files.ReferenceSetFile;
import org.airfit.files.ShopCatalogue;
import org.airfit.files.WrongFileException;
import org.airfit.select.Accessory;
import org.airfit.select.Catalogue;
import org.airfit.select.Part;
import org.jspecify.annotations.Nullable;

/** The catalogue of the shop as it stands, read again only when it was changed. */
final class House {

  /** The fields of a job that name a part of the catalogue by its id. */
  private static final Set<String> NAMING = Set.of("part", "socket", "plug");

  private final Stock stock;
  private volatile Stock.@Nullable Moment last;

  House(Stock stock) {
    this.stock = stock;
  }

  /** The catalogue of now. */
  Stock.Moment now() throws SQLException, WrongFileException {
    Stock.Moment before = last;
    return before != null && before.version() == stock.version() ? before : read();
  }

  private synchronized Stock.Moment read() throws SQLException, WrongFileException {
    Stock.Moment before = last;
    if (before != null && before.version() == stock.version()) {
      return before;
    }
    Stock.Moment read = stock.moment();
    last = read;
    return read;
  }

  /** The plug profiles of now as a set file. */
  Map<String, Object> set() throws SQLException, WrongFileException {
    return ReferenceSetFile.toObject(now().catalogue().profiles());
  }

  /** The file of now with some of its parts alone. */
  Map<String, Object> only(Set<String> ids) throws SQLException, WrongFileException {
    Map<String, Object> some = new LinkedHashMap<>(now().file());
    List<Object> parts = new ArrayList<>();
    if (some.get("parts") instanceof List<?> all) {
      for (Object part : all) {
        if (part instanceof Map<?, ?> fields && ids.contains(String.valueOf(fields.get("id")))) {
          parts.add(part);
        }
      }
    }
    some.put("parts", parts);
    some.remove("accessories");
    return some;
  }

  /** The files of the house, for a job that names them. */
  Files files(Object job) {
    return new Files(Map.of(), job);
  }

  /** Files that were given by name, and those of the house. */
  Files files(Map<String, String> given, Object job) {
    return new Files(given, job);
  }

  /** The files that one question is answered out of; its stock is that of one moment. */
  final class Files implements CatalogueShelf {

    private final Map<String, String> given;
    private final Object job;
    private @Nullable ShopCatalogue onShelf;
    private int leftOut;

    private Files(Map<String, String> given, Object job) {
      this.given = given;
      this.job = job;
    }

    /** Says how many articles could not be chosen as none is on the shelf; nothing where there are none. */
    void tellLeftOut(Map<String, Object> answer) {
      if (leftOut > 0) {
        Map<String, Object> told = new LinkedHashMap<>();
        told.put("number", leftOut);
        told.put(
            "sentence",
            (leftOut == 1
                    ? "1 article of the catalogue was"
                    : leftOut + " articles of the catalogue were")
                + " left out: no piece is on the shelf that is not held for somebody.");
        answer.put("leftOut", told);
      }
    }

    @Override
    public ShopCatalogue catalogue(String path) throws WrongFileException {
      if (isGiven(path) || !path.equals(Stock.FILE)) {
        return CatalogueFile.read(open(path));
      }
      ShopCatalogue known = onShelf;
      if (known == null) {
        known = onShelf();
        onShelf = known;
      }
      return known;
    }

    /** What can be handed over, and what the job names: that the customer has. */
    private ShopCatalogue onShelf() throws WrongFileException {
      ShopCatalogue all;
      Set<String> chosen;
      try {
        all = now().catalogue();
        chosen = new HashSet<>(stock.available());
      } catch (SQLException e) {
        throw new StockAwayException(e);
      }
      addNamed(job, chosen);
      List<Part> parts = all.parts().parts().stream()
          .filter(part -> chosen.contains(part.id()))
          .toList();
      List<Accessory> accessories = all.parts().accessories().stream()
          .filter(accessory -> chosen.contains(accessory.facts().id()))
          .toList();
      leftOut = all.parts().parts().size()
          + all.parts().accessories().size()
          - parts.size()
          - accessories.size();
      return leftOut == 0
          ? all
          : new ShopCatalogue(
              all.name(), all.profiles(), Catalogue.of(parts, accessories), all.remarks());
    }

    private boolean isGiven(String path) {
      return given.containsKey(name(path));
    }

    @Override
    public Document open(String path) throws WrongFileException {
      String name = name(path);
      if (isGiven(path)) {
        String text = Objects.requireNonNull(given.get(name), name);
        return new Document(
            name, name.endsWith(".csv") ? Csv.read(name, text) : Json.read(name, text), this);
      }
      if (!path.equals(Stock.FILE)) {
        throw new WrongFileException(
            name,
            "",
            "is not here; give it among the files, or name " + Stock.FILE
                + ", the stock of the shop");
      }
      try {
        return Document.of(Stock.FILE, now().file());
      } catch (SQLException e) {
        throw new StockAwayException(e);
      }
    }
  }

  /** The ids by which a job names parts that are there, docs/job-file.md. */
  private static void addNamed(@Nullable Object value, Set<String> ids) {
    if (value instanceof List<?> list) {
      list.forEach(each -> addNamed(each, ids));
    } else if (value instanceof Map<?, ?> fields) {
      fields.forEach((field, each) -> {
        if (each instanceof String id && NAMING.contains(String.valueOf(field))) {
          ids.add(id);
        }
        addNamed(each, ids);
      });
    }
  }

  /** The last part of a path, as nobody here knows of folders. */
  static String name(String path) {
    return path.substring(path.lastIndexOf('/') + 1);
  }

  /** The database does not answer, where only a fault of a file may be told. */
  static final class StockAwayException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    StockAwayException(SQLException cause) {
      super(cause);
    }
  }
}
