package org.airfit.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.airfit.measure.PartSpread;
import org.airfit.plug.KnownPlugs;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.plug.UniversalSocket;

/**
 * What a reference set file says, as an object or as a table; docs/reference-set-file.md has the fields.
 *
 * <p>What is written reads back as the very same set, to the last bit of every length.
 */
public final class ReferenceSetFile {

  private ReferenceSetFile() {}

  /**
   * Reads a set.
   *
   * @param document a JSON file, or a table
   * @return the set
   * @throws WrongFileException if a field or a cell is missing, misspelt or refused
   */
  public static ReferenceSet read(Document document) throws WrongFileException {
    return readMeasured(document).set();
  }

  /**
   * Reads a set with the readings of its pieces.
   *
   * @param document a JSON file, or a table
   * @return the set and the readings
   * @throws WrongFileException if a field or a cell is missing, misspelt or refused
   */
  public static MeasuredSet readMeasured(Document document) throws WrongFileException {
    Refusal.requireNone(document);
    return document.content() instanceof List
        ? ReferenceSetTable.read(document)
        : readObject(document);
  }

  private static MeasuredSet readObject(Document document) throws WrongFileException {
    Field root = Field.of(document);
    String name = root.field("set", "the name of the set").text();
    List<PlugProfile> profiles = new ArrayList<>();
    List<KnownPlugs> records = new ArrayList<>();
    for (Field item : root.field("profiles", "a list of plug profiles").items()) {
      PieceReadings readings = PieceReadings.of(item);
      profiles.add(ProfileFields.profile(item, true, readings));
      readings.record().ifPresent(records::add);
    }
    List<UniversalSocket> sockets = new ArrayList<>();
    if (root.find("sockets").isPresent()) {
      for (Field item : root.field("sockets", "a list of universal sockets").items()) {
        sockets.add(ProfileFields.socket(item));
        item.requireNothingElse();
      }
    }
    root.find("medium"); // refused above unless it is compressed air
    root.requireNothingElse();
    return new MeasuredSet(
        root.build(() -> ReferenceSet.of(name, profiles).withSockets(sockets)), records);
  }

  /**
   * Writes a set as plain values for JSON.
   *
   * @param set the set
   * @return maps, lists, texts, numbers and truth values
   */
  public static Map<String, Object> toObject(ReferenceSet set) {
    Map<String, Object> root = new LinkedHashMap<>();
    root.put("set", set.name());
    List<Object> profiles = new ArrayList<>();
    set.profiles().forEach(profile -> profiles.add(object(profile)));
    root.put("profiles", profiles);
    if (!set.sockets().isEmpty()) {
      List<Object> sockets = new ArrayList<>();
      set.sockets().forEach(socket -> sockets.add(object(socket)));
      root.put("sockets", sockets);
    }
    return root;
  }

  private static Map<String, Object> object(PlugProfile profile) {
    Map<String, Object> item = new LinkedHashMap<>(ProfileFields.headOf(profile));
    if (profile.provenance().kind() == Provenance.Kind.USER_MEASURED) {
      item.put("pieces", profile.provenance().pieces());
    }
    if (!profile.aliases().isEmpty()) {
      item.put("letters", List.copyOf(profile.aliases()));
    }
    if (ProfileFields.needsConfirming(profile)) {
      item.put("confirmed", true);
    }
    List<String> deciding = ProfileFields.deciding(profile);
    if (!deciding.isEmpty()) {
      item.put("deciding", deciding);
    }
    Map<String, Object> sizes = new LinkedHashMap<>();
    profile
        .dimensions()
        .forEach((dimension, spread) -> sizes.put(dimension.label(), object(spread)));
    item.put("dimensions", sizes);
    return item;
  }

  private static Map<String, Object> object(PartSpread spread) {
    Map<String, Object> size = new LinkedHashMap<>();
    if (spread instanceof PartSpread.Sample sample) {
      size.put("count", sample.pieces());
    }
    size.putAll(ProfileFields.fieldsOf(spread));
    return size;
  }

  private static Map<String, Object> object(UniversalSocket socket) {
    Map<String, Object> item = new LinkedHashMap<>();
    item.put("name", socket.name());
    item.put("takes", List.copyOf(socket.profileIds()));
    item.put("source", socket.source().citation());
    item.put("basis", socket.source().basis().label());
    return item;
  }

  /**
   * Writes a set as a table.
   *
   * @param set the set
   * @return the rows, the heading first
   */
  public static List<List<String>> toRows(ReferenceSet set) {
    return ReferenceSetTable.write(set);
  }
}
