package org.airfit.line;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.airfit.joint.StandardHose;
import org.airfit.joint.Tube;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.LengthUnit;
import org.airfit.quantity.NominalThreadSize;
import org.airfit.quantity.QuantityFormatException;
import org.airfit.source.Source;
import org.airfit.thread.Limits;
import org.jspecify.annotations.Nullable;

/** Reads the texts of {@link ConduitName}. */
final class ConduitReader {

  private static final String ACCEPTED =
      "what it is of, its size and its age as far as known, such as \"rubber hose\","
          + " \"1/4 in hose, old\", \"1/2 in steel pipe, sch 40\", \"3/4 in copper type L\", \"8 x 1 mm tube\"";

  /** How much rougher an old wall may be than the roughest new one [-]: as steel; see {@link ConduitName}. */
  static final double AGED = 10.0;

  /** How what was taken for the bore of a hose begins. */
  private static final String BORE_OF_HOSE = "bore of the hose by ISO 1307, however it is made";

  /** A tube whose wall stands behind its name. */
  private static final Pattern WALL_TOLD = Pattern.compile(
      "(?i) *([0-9./-]+ *(?:mm|in)) +((?:[a-z]+ +)?tub(?:e|ing)),? +wall +([0-9./]+ *(?:mm|in)) *");

  private static final Set<String> OLD =
      Set.of("old", "worn", "used", "corroded", "rusty", "service", "aged");

  /** Words that tell nothing by themselves. */
  private static final Set<String> FILLERS = Set.of(
      "pipe",
      "piping",
      "hose",
      "tube",
      "tubing",
      "in",
      "or",
      "the",
      "of",
      "new",
      "smooth",
      "air",
      "bore",
      "wall",
      "commercial",
      "drawn",
      "schedule",
      "sch",
      "type",
      "nps",
      "id",
      "od",
      "i.d.",
      "o.d.",
      "compressed");

  private static final Map<String, Wall> WALLS = Map.ofEntries(
      Map.entry("steel", Wall.COMMERCIAL_STEEL),
      Map.entry("black", Wall.COMMERCIAL_STEEL),
      Map.entry("galvanized", Wall.GALVANIZED),
      Map.entry("galvanised", Wall.GALVANIZED),
      Map.entry("stainless", Wall.STAINLESS_STEEL),
      Map.entry("copper", Wall.DRAWN_COPPER_OR_BRASS),
      Map.entry("brass", Wall.DRAWN_COPPER_OR_BRASS),
      Map.entry("aluminium", Wall.DRAWN_ALUMINIUM),
      Map.entry("aluminum", Wall.DRAWN_ALUMINIUM),
      Map.entry("lined", Wall.LINED_STEEL),
      Map.entry("coated", Wall.LINED_STEEL),
      Map.entry("cast", Wall.CAST_IRON),
      Map.entry("asphalted", Wall.ASPHALTED_CAST_IRON),
      Map.entry("plastic", Wall.SMOOTH_PLASTIC),
      Map.entry("pvc", Wall.SMOOTH_PLASTIC),
      Map.entry("polyurethane", Wall.SMOOTH_PLASTIC),
      Map.entry("pu", Wall.SMOOTH_PLASTIC),
      Map.entry("nylon", Wall.SMOOTH_PLASTIC),
      Map.entry("polyamide", Wall.SMOOTH_PLASTIC),
      Map.entry("pa", Wall.SMOOTH_PLASTIC),
      Map.entry("rubber", Wall.SMOOTH_RUBBER_HOSE),
      Map.entry("corrugated", Wall.CORRUGATED_RUBBER_HOSE));

  /** Which of two walls named together counts: "stainless steel", "asphalted cast iron", "corrugated rubber". */
  private static final List<Wall> STRONGER = List.of(
      Wall.STAINLESS_STEEL,
      Wall.GALVANIZED,
      Wall.LINED_STEEL,
      Wall.ASPHALTED_CAST_IRON,
      Wall.CORRUGATED_RUBBER_HOSE,
      Wall.CAST_IRON);

  private static final Set<Wall> RUSTING =
      Set.of(Wall.COMMERCIAL_STEEL, Wall.GALVANIZED, Wall.CAST_IRON, Wall.ASPHALTED_CAST_IRON);

  private final String text;
  private final List<String> words = new ArrayList<>();
  private final List<Source> sources = new ArrayList<>();
  private int sizeFrom = -1;
  private int sizeTo = -1;

  private ConduitReader(String text) {
    this.text = text;
  }

  static ConduitFacts read(String text) {
    return new ConduitReader(withWallInName(text)).facts();
  }

  /** "10 mm tube, wall 1 mm" as "10 mm x 1 mm tube". */
  private static String withWallInName(String text) {
    Matcher wall = WALL_TOLD.matcher(text);
    return wall.matches() ? wall.group(1) + " x " + wall.group(3) + " " + wall.group(2) : text;
  }

  private ConduitFacts facts() {
    if (text.length() > 200) {
      throw wrong(200, "this text is longer than 200 characters");
    }
    cut();
    Set<String> all = new HashSet<>(words);
    boolean isHose = all.contains("hose");
    boolean isTube = all.contains("tube") || all.contains("tubing");
    String schedule = after("sch", "schedule", "sch.");
    String type = after("type");
    Wall wall = wall(all);
    for (String word : words) {
      boolean isKnown = FILLERS.contains(word)
          || OLD.contains(word)
          || WALLS.containsKey(word)
          || word.equals("iron")
          || word.equals(schedule)
          || word.equals(type)
          || word.equals("sch.")
          || word.equals("wire");
      if (!isKnown) {
        throw wrong(
            Math.max(0, text.toLowerCase(Locale.ROOT).indexOf(word)),
            "\"" + word + "\" tells nothing of a pipe, tube or hose");
      }
    }
    if (all.isEmpty()
        || (!isHose
            && !isTube
            && !all.contains("pipe")
            && !all.contains("piping")
            && wall == null
            && schedule == null)) {
      throw wrong(0, "whether it is a pipe, a tube or a hose is missing");
    }
    boolean isCopper = wall == Wall.DRAWN_COPPER_OR_BRASS;
    if (wall == null && schedule != null) {
      wall = Wall.COMMERCIAL_STEEL;
      sources.add(Source.commonPractice("pipe of a schedule taken as steel"));
    }
    Limits bore = sizeFrom < 0 ? null : bore(isHose, isTube, isCopper, wall, schedule, type);
    Limits roughness = roughness(wall, isHose, isTube, all);
    return new ConduitFacts(bore, roughness, aged(wall, all), sources);
  }

  /** Cuts the text into words, and puts the size aside: a number, and all behind it to its unit. */
  private void cut() {
    String plain = text.toLowerCase(Locale.ROOT).replace(',', ' ').replace(';', ' ');
    int i = 0;
    while (i < plain.length()) {
      if (plain.charAt(i) == ' ') {
        i++;
        continue;
      }
      int end = wordEnd(plain, i);
      boolean isNumber =
          Character.isDigit(plain.charAt(i)) || "¼½¾⅛⅜⅝⅞".indexOf(plain.charAt(i)) >= 0;
      String before = words.isEmpty() ? "" : words.get(words.size() - 1);
      if (isNumber && !before.startsWith("sch") && sizeFrom < 0) {
        sizeFrom = i;
        end = sizeEnd(plain, i);
        sizeTo = end;
      } else if (plain.startsWith("sch", i) && Character.isDigit(plain.charAt(end - 1))) {
        words.add("sch");
        words.add(plain.substring(i + 3, end).replace(".", ""));
      } else {
        words.add(plain.substring(i, end));
      }
      i = end;
    }
  }

  private static int wordEnd(String plain, int from) {
    int end = from;
    while (end < plain.length() && plain.charAt(end) != ' ') {
      end++;
    }
    return end;
  }

  /** A size goes on over further numbers, "x" and the unit. */
  private static int sizeEnd(String plain, int from) {
    int end = wordEnd(plain, from);
    int next = end;
    while (next < plain.length()) {
      int start = next;
      while (start < plain.length() && plain.charAt(start) == ' ') {
        start++;
      }
      next = wordEnd(plain, start);
      String word = plain.substring(start, next);
      if (word.isEmpty() || !isOfSize(word)) {
        break;
      }
      end = next;
    }
    return end;
  }

  private static boolean isOfSize(String word) {
    return Character.isDigit(word.charAt(0))
        || Set.of("x", "×", "in", "in.", "inch", "inches", "\"", "mm", "cm").contains(word);
  }

  /** The word behind one of these, or null. */
  private @Nullable String after(String... heads) {
    for (int i = 0; i + 1 < words.size(); i++) {
      if (Arrays.asList(heads).contains(words.get(i))) {
        return words.get(i + 1);
      }
    }
    return null;
  }

  private static @Nullable Wall wall(Set<String> words) {
    List<Wall> named = words.stream()
        .map(WALLS::get)
        .filter(wall -> wall != null)
        .distinct()
        .sorted()
        .collect(Collectors.toList());
    for (Wall strong : STRONGER) {
      if (named.contains(strong)) {
        return strong;
      }
    }
    if (named.isEmpty()) {
      return words.contains("wire")
          ? Wall.CORRUGATED_RUBBER_HOSE
          : words.contains("iron") ? Wall.COMMERCIAL_STEEL : null;
    }
    return named.get(0);
  }

  /** Steel that may be old is not the new one. */
  private static @Nullable Wall aged(@Nullable Wall wall, Set<String> words) {
    return wall == Wall.COMMERCIAL_STEEL && !words.contains("new")
        ? Wall.STEEL_IN_AIR_SERVICE
        : wall;
  }

  private static boolean isOld(Set<String> words) {
    return words.stream().anyMatch(OLD::contains);
  }

  private Limits roughness(@Nullable Wall wall, boolean isHose, boolean isTube, Set<String> words) {
    boolean isOld = isOld(words);
    if (wall == null) {
      return ofUnknown(isHose, isTube, isOld);
    }
    boolean isNew = words.contains("new");
    if (RUSTING.contains(wall) && !isNew) {
      Wall service = Wall.STEEL_IN_AIR_SERVICE;
      sources.add(roughnessOf(service));
      if (!isOld) {
        sources.add(roughnessOf(wall));
        sources.add(Source.commonPractice("age not told: from new to years in service"));
      }
      return new Limits(isOld ? service.least() : wall.least(), service.most());
    }
    sources.add(roughnessOf(wall));
    return aged(wall.least(), wall.most(), isOld);
  }

  private static Source roughnessOf(Wall wall) {
    return new Source(
        wall.source().basis(),
        "roughness of " + wall.label() + " by " + wall.source().citation());
  }

  private Limits ofUnknown(boolean isHose, boolean isTube, boolean isOld) {
    if (isHose) {
      sources.add(
          Source.commonPractice("inner wall not told: from smooth plastic to smooth rubber"));
      return aged(Wall.SMOOTH_PLASTIC.least(), Wall.SMOOTH_RUBBER_HOSE.most(), isOld);
    }
    if (isTube) {
      sources.add(
          Source.commonPractice("wall of the tube not told: drawn metal or smooth plastic"));
      return aged(Wall.DRAWN_ALUMINIUM.least(), Wall.SMOOTH_PLASTIC.most(), isOld);
    }
    sources.add(Source.commonPractice(
        "wall of the pipe not told: from drawn metal to steel in air service"));
    return new Limits(Wall.DRAWN_ALUMINIUM.least(), Wall.STEEL_IN_AIR_SERVICE.most());
  }

  private Limits aged(Length least, Length most, boolean isOld) {
    if (!isOld) {
      return new Limits(least, most);
    }
    sources.add(Source.commonPractice(
        "an old wall up to ten times as rough as the roughest new, as steel (our choice)"));
    return new Limits(least, most.times(AGED));
  }

  private Limits bore(
      boolean isHose,
      boolean isTube,
      boolean isCopper,
      @Nullable Wall wall,
      @Nullable String schedule,
      @Nullable String type) {
    String size = text.substring(sizeFrom, sizeTo).strip();
    if (isHose) {
      return ofHose(length(size));
    }
    if (isCopper) {
      return ofCopper(pipeSize(size), type);
    }
    if (isTube || (wall != null && wall.isPlastic() && size.contains("mm"))) {
      return ofTube(size);
    }
    if (wall == null
        || wall == Wall.COMMERCIAL_STEEL
        || wall == Wall.GALVANIZED
        || wall == Wall.STAINLESS_STEEL) {
      return ofPipe(pipeSize(size), schedule);
    }
    throw wrong(
        sizeFrom,
        "no table tells the bore of such a pipe by its size: leave the size out and give the bore");
  }

  private String pipeSize(String size) {
    try {
      return NominalThreadSize.parse(size).label();
    } catch (QuantityFormatException e) {
      QuantityFormatException wrong = wrong(
          sizeFrom,
          "\"" + size
              + "\" is no size of pipe: say such as \"1/2 in\", or leave the size out and give the bore");
      wrong.initCause(e);
      throw wrong;
    }
  }

  private Length length(String size) {
    boolean isBareFraction =
        size.contains("/") && Character.isDigit(size.charAt(size.length() - 1));
    try {
      return Length.parse(isBareFraction ? size + " in" : size);
    } catch (QuantityFormatException e) {
      QuantityFormatException wrong =
          wrong(sizeFrom + Math.min(e.position(), size.length()), e.problem());
      wrong.initCause(e);
      throw wrong;
    }
  }

  private Limits ofHose(Length called) {
    HoseBore name;
    try {
      name = HoseBore.of(called);
    } catch (IllegalArgumentException e) {
      QuantityFormatException wrong = wrong(sizeFrom, String.valueOf(e.getMessage()));
      wrong.initCause(e);
      throw wrong;
    }
    StandardHose hose = StandardHose.calledBy(name)
        .orElseThrow(() -> wrong(
            sizeFrom,
            "no hose of that name stands in ISO 1307 as far as it was seen: give the"
                + " bore, or one of "
                + StandardHose.all().stream()
                    .map(ConduitReader::names)
                    .collect(Collectors.joining(", "))));
    sources.add(new Source(hose.source().basis(), BORE_OF_HOSE));
    return hose.anyBore();
  }

  /** Whether that is what the bore of a hose was taken from, of which only the name is told. */
  static boolean isBoreOfHose(Source source) {
    return source.citation().equals(BORE_OF_HOSE);
  }

  private static String names(StandardHose hose) {
    String millimetres = hose.nominal().nominal().format(LengthUnit.MILLIMETRE);
    return hose.tradeName()
        .map(trade -> trade.label() + " (" + millimetres + ")")
        .orElse(millimetres);
  }

  private Limits ofPipe(String size, @Nullable String schedule) {
    if (schedule == null) {
      sources.add(Source.commonPractice("schedule not told: from 80 to 40"));
    }
    return among(
        Tube.Kind.STEEL_PIPE,
        tube -> tube.name().equals(size) && (schedule == null || tube.type().equals(schedule)),
        "steel pipe of this size and schedule");
  }

  private Limits ofCopper(String size, @Nullable String type) {
    if (type == null) {
      sources.add(Source.commonPractice("type of the copper tube not told: K, L or M"));
    }
    return among(
        Tube.Kind.COPPER_TUBE,
        tube -> tube.name().equals(size) && (type == null || tube.type().equalsIgnoreCase(type)),
        "copper tube of this size and type");
  }

  private Limits ofTube(String size) {
    String[] sizes = size.split("[xX×]", 2);
    if (sizes.length == 2) {
      String unit = size.contains("mm") ? " mm" : " in";
      Length second = length(sizes[1].strip());
      String first = sizes[0].strip();
      Length outside =
          length(Character.isDigit(first.charAt(first.length() - 1)) ? first + unit : first);
      boolean isWall = second.compareTo(outside.times(0.5)) < 0;
      if (second.compareTo(outside) >= 0) {
        throw wrong(
            sizeFrom,
            "a tube is named by its outside and its wall: the outside must be the larger");
      }
      sources.add(
          Source.derived(isWall ? "bore from outside and wall" : "second size taken as the bore"));
      Length bore = isWall ? outside.minus(second.times(2.0)) : second;
      return new Limits(bore, bore);
    }
    Length outside = length(size);
    sources.add(Source.commonPractice(
        "wall of the tube not told: every tube of that outside in the tables"));
    return among(
        Tube.Kind.PLASTIC_TUBE,
        tube -> Math.abs(tube.outside().millimetres() - outside.millimetres()) < 1.0e-6,
        "tube of this outside");
  }

  /** The least and the largest bore among tubes of a table. */
  private Limits among(Tube.Kind kind, Predicate<Tube> wanted, String what) {
    List<Tube> found = Tube.all(kind).stream().filter(wanted).toList();
    if (found.isEmpty()) {
      throw wrong(
          sizeFrom, "no " + what + " stands in the tables: leave the size out and give the bore");
    }
    List<Limits> bores = found.stream()
        .map(tube -> tube.boreLimits().orElse(new Limits(tube.bore(), tube.bore())))
        .toList();
    for (Tube tube : found) {
      Source source =
          new Source(tube.source().basis(), "bore by " + tube.source().citation());
      if (!sources.contains(source)) {
        sources.add(source);
      }
    }
    return new Limits(
        Collections.min(bores.stream().map(Limits::least).toList()),
        Collections.max(bores.stream().map(Limits::most).toList()));
  }

  private QuantityFormatException wrong(int at, String problem) {
    return new QuantityFormatException(text, at, problem, ACCEPTED);
  }
}
