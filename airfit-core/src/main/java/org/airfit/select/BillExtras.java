package org.airfit.select;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.safety.Judgement;
import org.airfit.safety.Ruling;
import org.airfit.source.Source;

/** What a proposal needs beside its parts and joints: what holds a hose that parts, a drain, and what was asked for. */
final class BillExtras {

  /** Hoses of more than this bore get a restraint without being asked. */
  private static final Length RESTRAINED_ABOVE = Length.ofInches(0.5);

  /** The fact by which a safety rule asks for a device that shuts off the air of a failed hose. */
  private static final String HOSE_BORE = "hose bore";

  private static final Source RESTRAINT = Source.commonPractice(
      "a restraint across every joint of a hose of more than 1/2 in bore; of such a hose 29 CFR 1926.302(b)(7) asks for"
          + " a device at the source that cuts the flow, not for a restraint");

  static final Source DRAIN = Source.handbook(
      "tool manual: a water leg at the low end of every branch, drained; trade page on"
          + " distribution: a drop with a tee and a drain valve at its base, the outlet above it");

  private static final Source ASKED = Source.commonPractice("asked for with the job");

  private final Assembly a;
  private final AccessoryShelf shelf;
  private final List<String> questions = new ArrayList<>();

  BillExtras(Assembly a, AccessoryShelf shelf) {
    this.a = a;
    this.shelf = shelf;
  }

  List<String> questions() {
    return questions;
  }

  List<BillLine> lines() {
    List<BillLine> lines = new ArrayList<>(restraints());
    lines.addAll(fuses());
    drain().ifPresent(lines::add);
    lines.addAll(caps());
    hooks().ifPresent(lines::add);
    askForWhipHose();
    return lines;
  }

  /** A joint of a hose with what is around it: one hose, or two that are coupled to each other. */
  private record HoseJoint(String where, List<Part.Hose> hoses) {

    boolean isLarge() {
      return hoses.stream().anyMatch(hose -> hose.widestBore().compareTo(RESTRAINED_ABOVE) > 0);
    }

    HoseBore widest() {
      return hoses.stream().map(Part.Hose::bore).max(Comparator.naturalOrder()).orElseThrow();
    }

    boolean suits(Accessory.WhipRestraint restraint) {
      return hoses.stream().allMatch(hose -> restraint.isFor(hose.bore()));
    }
  }

  /** Both ends of every hose; where only a coupling stands between two hoses, one restraint spans it. */
  private List<HoseJoint> hoseJoints() {
    List<HoseJoint> joints = new ArrayList<>();
    a.stretches().forEach(stretch -> hoseJoints(joints, stretch));
    return joints;
  }

  /** Those of one stretch, as often as it is there. */
  private void hoseJoints(List<HoseJoint> joints, Stretch stretch) {
    int line = stretch.line();
    String way = a.line(line);
    List<HoseJoint> own = new ArrayList<>();
    String from = line == Stretch.SHARED ? "outlet" : "splitter";
    Part.Hose before = null;
    List<String> nouns = Nouns.of(a.placed(), a.linesOfPlaced());
    for (int i = 0; i < nouns.size(); i++) {
      Placed placed = a.placed().get(i);
      String noun = nouns.get(i);
      Position position = placed.position();
      if (position.line() != line) {
        continue;
      }
      String where = way + from + " to " + noun;
      if (placed.part() instanceof Part.Hose hose) {
        own.add(new HoseJoint(where, before == null ? List.of(hose) : List.of(before, hose)));
        before = hose;
        from = noun;
      } else if (!position.isCoupling()) {
        if (before != null) {
          own.add(new HoseJoint(where, List.of(before)));
        }
        before = null;
        from = noun;
      }
    }
    if (before != null && stretch.isToTool()) {
      own.add(new HoseJoint(way + from + " to tool", List.of(before)));
    }
    for (int i = 0; i < stretch.count(); i++) {
      joints.addAll(own);
    }
  }

  /** One line for every article, with the joints it spans. */
  private List<BillLine> restraints() {
    boolean asked = a.requirement().extras().contains(Extra.WHIP_RESTRAINT);
    Map<List<Object>, List<HoseJoint>> alike = new LinkedHashMap<>();
    for (HoseJoint joint : hoseJoints()) {
      if (asked || joint.isLarge()) {
        Optional<PartFacts> facts = shelf
            .find(Accessory.WhipRestraint.class, joint::suits)
            .map(Accessory.WhipRestraint::facts);
        String name = facts
            .map(PartFacts::name)
            .orElseGet(() -> "whip restraint for " + joint.widest().label() + " hose");
        alike
            .computeIfAbsent(List.of(name, facts, joint.isLarge()), any -> new ArrayList<>())
            .add(joint);
      }
    }
    List<BillLine> lines = new ArrayList<>();
    alike.values().forEach(joints -> lines.add(restraint(joints)));
    return BillJoints.together(lines);
  }

  private BillLine restraint(List<HoseJoint> joints) {
    HoseJoint first = joints.get(0);
    String why = "holds the hose if a joint of it parts: "
        + ByLine.joined(a, joints.stream().map(HoseJoint::where).distinct().toList(), ", ")
        + (first.isLarge()
            ? "; its bore is more than 1/2 in (12.7 mm), and practice restrains such a hose"
            : "; as asked for");
    Source source = first.isLarge() ? RESTRAINT : ASKED;
    return shelf
        .find(Accessory.WhipRestraint.class, first::suits)
        .map(found ->
            BillLine.of(BillLine.Kind.WHIP_RESTRAINT, found.facts(), joints.size(), why, source))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.WHIP_RESTRAINT,
            "whip restraint for " + first.widest().label() + " hose",
            joints.size(),
            why + "; the catalogue has none",
            source));
  }

  /**
   * What the safety rules of the job ask for at the source of a large hose, or of the line it is in, for every hose that
   * has none in front of it; one serves all that follow.
   */
  private List<BillLine> fuses() {
    Map<Integer, Boolean> isGuarded = new HashMap<>();
    Map<String, BillLine> lines = new LinkedHashMap<>();
    for (Stretch stretch : a.stretches()) {
      int line = stretch.line();
      boolean guarded = isGuarded.getOrDefault(stretch.before(), false);
      for (Placed placed : a.placed()) {
        if (placed.position().line() != line) {
          continue;
        }
        Optional<Ruling> asked = guarded ? Optional.empty() : fuseAsked(placed.part());
        if (asked.isPresent()) {
          BillLine fuse = fuse(stretch, asked.get());
          lines.merge(
              fuse.name(),
              fuse,
              (one, other) -> BillJoints.together(List.of(one, other)).get(0));
        }
        guarded |= asked.isPresent() || isFuse(placed.part());
      }
      isGuarded.put(line, guarded);
    }
    return List.copyOf(lines.values());
  }

  private static boolean isFuse(Part part) {
    return part instanceof Part.Device device && device.kind() == DeviceKind.HOSE_FUSE;
  }

  /** The safety rule that asks for one in front of a part, if that is a hose and large. */
  private Optional<Ruling> fuseAsked(Part part) {
    if (!(part instanceof Part.Hose hose)) {
      return Optional.empty();
    }
    return a
        .requirement()
        .rules()
        .rulings(JobSituation.of(a.requirement()).toolOnHose(hose.widestBore()).build())
        .stream()
        .filter(ruling -> ruling.judgement() == Judgement.REQUIRED
            && ruling.rule().quantity().filter(HOSE_BORE::equals).isPresent())
        .findFirst();
  }

  private static BillLine fuse(Stretch stretch, Ruling ruling) {
    return BillLine.lacking(
        BillLine.Kind.HOSE_FUSE,
        "hose fuse at the " + (stretch.line() == Stretch.SHARED ? "source" : "splitter"),
        stretch.count(),
        ruling.rule().demand() + " Put it into the line, so that its pressure loss is reckoned",
        ruling.rule().source());
  }

  private Optional<BillLine> drain() {
    if (asksForDryer(a.requirement())) {
      questions.add(
          "Is there a dryer behind the compressor? Without one, water collects in the pipe, and"
              + " its lowest point needs a drain.");
    }
    return drain(a.requirement(), shelf);
  }

  /** Whether nobody told if the air is dried that pipes carry. */
  static boolean asksForDryer(Requirement job) {
    return !job.pipeNames().isEmpty() && job.isDried().isEmpty();
  }

  /** The drain of pipes whose air no dryer dried. */
  static Optional<BillLine> drain(Requirement job, AccessoryShelf shelf) {
    if (job.pipeNames().isEmpty() || job.isDried().orElse(true)) {
      return Optional.empty();
    }
    String why =
        "lets water out at the lowest point of the pipe, as there is no dryer; the outlet stands above it";
    return Optional.of(shelf
        .find(Accessory.Drain.class, any -> true)
        .map(drain -> BillLine.of(BillLine.Kind.DRAIN, drain.facts(), 1, why, DRAIN))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.DRAIN, "drain valve", 1, why + "; the catalogue has none", DRAIN)));
  }

  private List<BillLine> caps() {
    if (!a.requirement().extras().contains(Extra.END_CAP)) {
      return List.of();
    }
    Map<String, Integer> plugs = new LinkedHashMap<>();
    a.couplings()
        .forEach(pair -> plugs.merge(pair.plug().profile(), pair.position().count(), Integer::sum));
    List<BillLine> lines = new ArrayList<>();
    String why = "keeps dirt out of a plug that is not in its socket, as asked for";
    plugs.forEach((profile, count) -> lines.add(shelf
        .find(Accessory.EndCap.class, cap -> cap.profile().equals(profile))
        .map(cap -> BillLine.of(BillLine.Kind.END_CAP, cap.facts(), count, why, ASKED))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.END_CAP,
            "end cap for plugs of profile " + profile,
            count,
            why + "; the catalogue has none",
            ASKED))));
    return lines;
  }

  private Optional<BillLine> hooks() {
    int hoses = a.hoses().stream().mapToInt(hose -> hose.position().count()).sum();
    if (hoses == 0 || !a.requirement().extras().contains(Extra.HOOK)) {
      return Optional.empty();
    }
    String why = "to hang the hose on, as asked for";
    return Optional.of(shelf
        .find(Accessory.HoseHook.class, any -> true)
        .map(hook -> BillLine.of(BillLine.Kind.HOOK, hook.facts(), hoses, why, ASKED))
        .orElseGet(() -> BillLine.lacking(
            BillLine.Kind.HOOK, "hose hook", hoses, why + "; the catalogue has none", ASKED)));
  }

  private void askForWhipHose() {
    List<Requirement> asked = a.requirement().toEachTool().stream()
        .filter(job -> job.isImpactTool() && job.layout().hasCoupling() && !job.isWhipHoseTold())
        .toList();
    if (asked.isEmpty()) {
      return;
    }
    boolean isElsewhere = asked.stream()
        .flatMap(job -> job.layout().allSlots().stream())
        .anyMatch(slot -> slot instanceof Slot.Hose hose && hose.isWhip());
    questions.add("Does the percussion tool hang on a whip hose? If it does not, put "
        + (isElsewhere
            ? "the whip hose of the line last, next to the tool."
            : "one into the line, so that it is chosen and priced with the rest."));
  }
}
