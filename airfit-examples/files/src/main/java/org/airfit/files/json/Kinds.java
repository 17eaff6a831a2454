package org.airfit.files.json;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.flow.OutletAtFlow;
import org.airfit.joint.End;
import org.airfit.line.LineLoss;
import org.airfit.measure.PartSpread;
import org.airfit.network.NetworkResult;
import org.airfit.plant.Compressor;
import org.airfit.plant.Supply;
import org.airfit.run.RunResult;
import org.airfit.select.Accessory;
import org.airfit.select.DeviceKind;
import org.airfit.select.Part;
import org.airfit.select.RegulatorKind;
import org.airfit.select.Selection;
import org.airfit.select.Slot;
import org.airfit.thread.BsppThread;
import org.airfit.thread.BsptThread;
import org.airfit.thread.ForeignThread;
import org.airfit.thread.NamedThread;
import org.airfit.thread.NpscThread;
import org.airfit.thread.NpsmThread;
import org.airfit.thread.NptThread;
import org.airfit.thread.PipeThread;
import org.airfit.thread.RpThread;
import org.airfit.thread.ThreadDesignation;

/**
 * What the field {@code kind} says where a value is one of several types. The words stand in files of users: they are
 * kept when a class is renamed.
 *
 * <p>Some types have a kind of their own, such as a device, which may be a filter; then {@code kind} says that.
 */
final class Kinds {

  /** The types of each sealed type, by the word. */
  private static final Map<Class<?>, Map<String, Class<?>>> KINDS = kinds();

  /** Types whose own {@code kind()} is the word. */
  private static final List<Class<?>> OWN =
      List.of(Part.Device.class, Part.Regulator.class, Slot.InLine.class, Slot.Regulated.class);

  private Kinds() {}

  private static Map<Class<?>, Map<String, Class<?>>> kinds() {
    Map<Class<?>, Map<String, Class<?>>> all = new LinkedHashMap<>();
    all.put(
        OutletAtFlow.class,
        of("passes", OutletAtFlow.Passes.class, "chokes", OutletAtFlow.Chokes.class));
    all.put(LineLoss.class, of("flowing", LineLoss.Flowing.class, "choked", LineLoss.Choked.class));
    all.put(
        RunResult.class,
        of("delivered", RunResult.Delivered.class, "starved", RunResult.Starved.class));
    all.put(
        NetworkResult.class,
        of("solved", NetworkResult.Solved.class, "noSolution", NetworkResult.NoSolution.class));
    all.put(
        Selection.class,
        of("fits", Selection.Proposals.class, "nothingFits", Selection.NothingFits.class));
    all.put(
        PartSpread.class,
        of(
            "limits",
            PartSpread.Limits.class,
            "normal",
            PartSpread.Normal.class,
            "sample",
            PartSpread.Sample.class));
    all.put(
        Supply.class,
        of(
            "fixed",
            Supply.Fixed.class,
            "regulator",
            org.airfit.plant.Regulator.class,
            "compressor",
            Compressor.class));
    all.put(
        Accessory.class,
        of(
            "thread sealant",
            Accessory.ThreadSealant.class,
            "whip restraint",
            Accessory.WhipRestraint.class,
            "hose clamp",
            Accessory.HoseClamp.class,
            "sealing washer",
            Accessory.SealingWasher.class,
            "drain",
            Accessory.Drain.class,
            "end cap",
            Accessory.EndCap.class,
            "hose hook",
            Accessory.HoseHook.class));
    Map<String, Class<?>> parts = of(
        "socket",
        Part.Socket.class,
        "plug",
        Part.Plug.class,
        "hose",
        Part.Hose.class,
        "splitter",
        Part.Splitter.class,
        "pipe",
        Part.Pipe.class,
        "adapter",
        Part.Adapter.class);
    addOwn(parts, List.of(RegulatorKind.values()), Part.Regulator.class);
    addOwn(parts, List.of(DeviceKind.values()), Part.Device.class);
    all.put(Part.class, parts);
    Map<String, Class<?>> slots = of(
        "coupling",
        Slot.Coupling.class,
        "hose",
        Slot.Hose.class,
        "splitter",
        Slot.Splitter.class,
        "pipe",
        Slot.Pipe.class);
    addOwn(slots, List.of(RegulatorKind.values()), Slot.Regulated.class);
    addOwn(slots, List.of(DeviceKind.values()), Slot.InLine.class);
    all.put(Slot.class, slots);
    all.put(
        NamedThread.class,
        of("pipeThread", ThreadDesignation.class, "foreignThread", ForeignThread.class));
    all.put(
        PipeThread.class,
        of(
            "npt",
            NptThread.class,
            "npsc",
            NpscThread.class,
            "npsm",
            NpsmThread.class,
            "bspt",
            BsptThread.class,
            "rp",
            RpThread.class,
            "bspp",
            BsppThread.class));
    return all;
  }

  private static Map<String, Class<?>> of(Object... wordsAndTypes) {
    Map<String, Class<?>> kinds = new LinkedHashMap<>();
    for (int i = 0; i < wordsAndTypes.length; i += 2) {
      kinds.put((String) wordsAndTypes[i], (Class<?>) wordsAndTypes[i + 1]);
    }
    return kinds;
  }

  private static void addOwn(
      Map<String, Class<?>> kinds, Collection<? extends Enum<?>> words, Class<?> type) {
    words.forEach(word -> kinds.put(word.toString(), type));
  }

  /** The sealed types that need a word; an {@link End} is a text. */
  static Collection<Class<?>> sealedTypes() {
    return KINDS.keySet();
  }

  /** Whether values of this declared type say their kind. */
  static boolean isOneOfSeveral(Class<?> declared) {
    return KINDS.containsKey(declared);
  }

  /** The types of a sealed type by their words. */
  static Map<String, Class<?>> of(Class<?> declared) {
    return KINDS.getOrDefault(declared, Map.of());
  }

  /** The words of a type; empty where it needs none. */
  static List<String> wordsOf(Class<?> type) {
    List<String> words = new ArrayList<>();
    for (Map<String, Class<?>> kinds : KINDS.values()) {
      kinds.forEach((word, each) -> {
        if (each.equals(type) && !words.contains(word)) {
          words.add(word);
        }
      });
    }
    return words;
  }

  /** Whether the word is told by the type's own {@code kind()}. */
  static boolean hasOwn(Class<?> type) {
    return OWN.contains(type);
  }

  /** The word of a type that has one and the same for all its values. */
  static Optional<String> wordOf(Class<?> type) {
    return hasOwn(type) ? Optional.empty() : wordsOf(type).stream().findFirst();
  }
}
