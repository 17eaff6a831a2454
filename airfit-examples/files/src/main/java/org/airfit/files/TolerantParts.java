package org.airfit.files;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.airfit.plug.ReferenceSet;
import org.airfit.select.ListedPart;

/**
 * Reads the parts of a price list one after the other, and goes on where one cannot be read. To find every fault of
 * such a part, each field that was refused gets a value that is accepted, and the part is read again; it is never used.
 */
final class TolerantParts {

  /** No part has more faults that are told. */
  private static final int MOST_FAULTS = 30;

  private final ReferenceSet set;
  private final Optional<String> currency;
  private final PartFields reader;
  private final List<ListedPart> read = new ArrayList<>();
  private final List<UnreadArticle> unread = new ArrayList<>();

  TolerantParts(ReferenceSet set, Optional<String> currency, List<String> remarks) {
    this.set = set;
    this.currency = currency;
    this.reader = new PartFields(set, currency, remarks);
  }

  List<ListedPart> read() {
    return read;
  }

  List<UnreadArticle> unread() {
    return unread;
  }

  void add(Field item) {
    try {
      read.add(reader.listed(item));
    } catch (WrongFileException e) {
      addFaults(item, e);
    }
  }

  private void addFaults(Field item, WrongFileException first) {
    String id = id(item);
    PartFields again = new PartFields(set, currency, new ArrayList<>());
    Set<String> mended = new HashSet<>();
    WrongFileException wrong = first;
    Field rest = item;
    for (int count = 0; count < MOST_FAULTS; count++) {
      String field = fieldOf(item, wrong);
      if (!field.isEmpty() && !mended.add(field)) {
        return; // told above: without it the part cannot be read, whatever else is wrong
      }
      unread.add(new UnreadArticle(id, wrong.place(), wrong.complaint()));
      if (field.isEmpty() || !item.isObject()) {
        return;
      }
      try {
        rest = rest.replacing(field, accepted(field));
        again.listed(rest);
        return;
      } catch (WrongFileException e) {
        wrong = e;
      }
    }
  }

  private static String id(Field item) {
    try {
      return item.isObject() && item.find("id").filter(Field::isText).isPresent()
          ? item.field("id", "").text()
          : "";
    } catch (WrongFileException e) {
      return "";
    }
  }

  /** The field of the item that a complaint is about; empty where it is about the item as a whole. */
  private static String fieldOf(Field item, WrongFileException wrong) {
    String owner = item.place() + ".";
    if (!wrong.place().startsWith(owner)) {
      return "";
    }
    String field = wrong.place().substring(owner.length());
    int end = 0;
    while (end < field.length() && field.charAt(end) != '.' && field.charAt(end) != '[') {
      end++;
    }
    return field.substring(0, end);
  }

  /** A value that is accepted in a field that must be there; empty of one that may be left out. */
  private Optional<Object> accepted(String field) {
    String profile = set.profiles().isEmpty() ? "none" : set.profiles().get(0).id();
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("id", "id");
    values.put("name", "name");
    values.put("end", "1/4 NPT male");
    values.put("otherEnd", "1/4 NPT male");
    values.put("capacity", "Cv 1");
    values.put("profile", profile);
    values.put("takes", List.of(profile));
    values.put("hose", "3/8 in");
    values.put("length", "1 m");
    values.put("bore", "9 mm");
    values.put("wall", "smooth rubber hose");
    values.put("roughness", "0.05 mm");
    values.put("outlets", List.of("1/4 NPT male", "1/4 NPT male"));
    values.put("droop", "1 psi");
    values.put("atFlow", "1 scfm");
    return Optional.ofNullable(values.get(field));
  }
}
