package org.airfit.files;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.quantity.Temperature;
import org.airfit.safety.Medium;
import org.airfit.select.Environment;
import org.airfit.select.Lubrication;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.airfit.select.ToolLine;

/** The tool of a job, and the conditions it works in. */
final class JobTool {

  /** What a field says that is true, and that is false; what is missing says nothing. */
  private record Flag<T>(String field, UnaryOperator<T> said, UnaryOperator<T> denied) {

    Flag(String field, UnaryOperator<T> said) {
      this(field, said, UnaryOperator.identity());
    }
  }

  /** How what is told of a tool is said to what it is told of. */
  private record Words<T>(
      BiFunction<T, AirField.Average, T> average,
      BiFunction<T, GaugePressure, T> rated,
      BiFunction<T, GaugePressure, T> marked,
      List<Flag<T>> flags,
      BiFunction<T, GaugePressure, T> cleansAt,
      UnaryOperator<T> cleans) {}

  private static final Words<Requirement.Builder> OF_A_JOB = new Words<>(
      (job, told) -> job.average(told.flow(), told.leastDuty(), told.mostDuty()),
      Requirement.Builder::toolRating,
      Requirement.Builder::markedUpTo,
      List.of(
          new Flag<>("hammers", Requirement.Builder::impactTool),
          new Flag<>("whipHose", Requirement.Builder::whipHose, Requirement.Builder::noWhipHose),
          new Flag<>("feedsFasteners", Requirement.Builder::automaticFeed),
          new Flag<>("blasts", Requirement.Builder::blasting),
          new Flag<>("paints", Requirement.Builder::painting)),
      Requirement.Builder::blowGun,
      Requirement.Builder::blowGun);

  private static final Words<ToolLine> OF_A_LINE = new Words<>(
      (line, told) -> line.withAverage(told.flow(), told.leastDuty(), told.mostDuty()),
      ToolLine::withToolRating,
      ToolLine::withMarkedUpTo,
      List.of(
          new Flag<>("hammers", ToolLine::withImpactTool),
          new Flag<>("whipHose", ToolLine::withOwnWhipHose, ToolLine::withoutOwnWhipHose),
          new Flag<>("feedsFasteners", ToolLine::withAutomaticFeed),
          new Flag<>("blasts", ToolLine::withBlasting),
          new Flag<>("paints", ToolLine::withPainting)),
      ToolLine::withBlowGun,
      ToolLine::withBlowGun);

  private JobTool() {}

  /** Starts a requirement with the tool. */
  static Requirement.Builder of(Field tool, AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<MarkingField> marked = MarkingField.in(tool);
    AirField.Air air = AirField.of(tool, marked, around, remarks);
    Range<GaugePressure> pressure = MarkingField.pressure(tool, marked, remarks);
    UsualValues.askOfTool(tool, air.whileRunning(), pressure, remarks);
    Requirement.Builder requirement =
        pressureField(tool, marked).build(() -> Requirement.forTool(air.whileRunning(), pressure));
    requirement.toolInlet(EndField.in(tool.field("inlet", Accepted.END), remarks));
    return told(tool, marked, air, pressure, requirement, OF_A_JOB, remarks);
  }

  /** A line to a tool, or several that are alike. */
  static ToolLine line(
      Field tool, int count, List<Slot> slots, AirState around, List<String> remarks)
      throws WrongFileException {
    String name = tool.field("name", "what the tool is").text();
    Optional<MarkingField> marked = MarkingField.in(tool);
    AirField.Air air = AirField.of(tool, marked, around, remarks);
    Range<GaugePressure> pressure = MarkingField.pressure(tool, marked, remarks);
    UsualValues.askOfTool(tool, air.whileRunning(), pressure, remarks);
    End inlet = EndField.in(tool.field("inlet", Accepted.END), remarks);
    ToolLine line = pressureField(tool, marked)
        .build(
            () -> ToolLine.to(name, air.whileRunning(), pressure, inlet, slots).alike(count));
    return told(tool, marked, air, pressure, line, OF_A_LINE, remarks);
  }

  /** The field that tells the pressure, of which a complaint about it speaks. */
  private static Field pressureField(Field tool, Optional<MarkingField> marked)
      throws WrongFileException {
    return tool.find("pressure").or(() -> marked.map(MarkingField::field)).orElse(tool);
  }

  /** With what else the fields tell of the tool. */
  private static <T> T told(
      Field tool,
      Optional<MarkingField> marked,
      AirField.Air air,
      Range<GaugePressure> needed,
      T start,
      Words<T> words,
      List<String> remarks)
      throws WrongFileException {
    T fuller =
        air.average().isPresent() ? words.average().apply(start, air.average().get()) : start;
    Optional<Field> rating = tool.find("notAbove", Accepted.GAUGE);
    Optional<GaugePressure> marking = marked.flatMap(MarkingField::allowed);
    Optional<GaugePressure> allowed = marking;
    if (rating.isPresent()) {
      GaugePressure most =
          rating.get().one(GaugePressure::parse, "give the lowest, which the tool surely stands");
      if (marked.isPresent()) {
        marked.get().remarkOnLimit(rating.get(), most, remarks);
      }
      allowed = marking.filter(printed -> printed.compareTo(most) < 0).or(() -> Optional.of(most));
    }
    Optional<GaugePressure> upTo =
        rating.isEmpty() ? marked.flatMap(MarkingField::endOfRange) : Optional.empty();
    if (upTo.isPresent()) {
      T before = fuller;
      marked.get().remarkOnRange(remarks);
      UsualValues.askOfRating(marked.get().field(), upTo.get(), needed.least(), remarks);
      fuller = tool.build(() -> words.marked().apply(before, upTo.get()));
    }
    if (allowed.isPresent()) {
      T before = fuller;
      Field field = rating.or(() -> marked.map(MarkingField::field)).orElse(tool);
      UsualValues.askOfRating(field, allowed.get(), needed.least(), remarks);
      if (allowed.get().compareTo(needed.least()) < 0) {
        remarks.add("The tool needs more than its maker allows, as " + field.place()
            + " says: is one of the two wrong?");
      }
      GaugePressure limit = allowed.get();
      fuller = rating.orElse(tool).build(() -> words.rated().apply(before, limit));
    }
    for (Flag<T> flag : words.flags()) {
      Optional<Field> told = tool.find(flag.field());
      if (told.isPresent()) {
        fuller = (told.get().yes() ? flag.said() : flag.denied()).apply(fuller);
      }
    }
    boolean cleans = tool.flag("cleans");
    Optional<Field> blocked = tool.find("atBlockedNozzle", Accepted.GAUGE);
    if (blocked.isPresent()) {
      T before = fuller;
      GaugePressure deadEnd = blocked.get().most(GaugePressure::parse);
      fuller = blocked.get().build(() -> words.cleansAt().apply(before, deadEnd));
    } else if (cleans) {
      fuller = words.cleans().apply(fuller);
    }
    tool.requireNothingElse();
    return fuller;
  }

  /** Tells the conditions. */
  static void conditions(Field field, ShopCatalogue catalogue, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> place = field.find("place");
    if (place.isPresent()) {
      requirement.environment(
          place.get().oneOf(List.of(Environment.values()), Environment::toString));
    }
    Optional<Field> air = field.find("air");
    if (air.isPresent()) {
      requirement.lubrication(
          air.get().oneOf(List.of(Lubrication.values()), Lubrication::toString));
    }
    Optional<Field> medium = field.find("medium");
    if (medium.isPresent()) {
      requirement.medium(medium.get().oneOf(List.of(Medium.values()), Medium::toString));
    }
    Optional<Field> marking = field.find("marking");
    if (marking.isPresent()) {
      requirement.marking(marking.get().text());
    }
    Optional<Field> profiles = field.find("profilesInUse", "a list of ids of profiles");
    if (profiles.isPresent()) {
      Set<String> ids = new LinkedHashSet<>();
      for (Field profile : profiles.get().items()) {
        ids.add(PartFields.profileId(profile, catalogue.profiles()));
      }
      requirement.profilesInUse(ids);
    }
    temperatures(field, requirement);
    if (field.flag("dropped")) {
      requirement.dropped();
    }
    if (field.flag("dragged")) {
      requirement.dragged();
    }
    if (field.flag("vented")) {
      requirement.ventRequired();
    }
    field.requireNothingElse();
  }

  /** How cold and how hot it gets. Of what is not told the bound of a shop stands; who tells no more needs no maker. */
  private static void temperatures(Field conditions, Requirement.Builder requirement)
      throws WrongFileException {
    Optional<Field> low = conditions.find("coldest", "the lowest temperature, such as \"-10 °C\"");
    Optional<Field> high = conditions.find("hottest", "the highest temperature, such as \"60 °C\"");
    if (low.isPresent() && high.isPresent()) {
      Temperature cold = low.get().least(Temperature::parse);
      Temperature hot = high.get().most(Temperature::parse);
      PartFields.requireOrder(low.get(), cold, high.get(), hot);
      requirement.temperatures(cold, hot);
    } else if (low.isPresent()) {
      requirement.coldest(low.get().least(Temperature::parse));
    } else if (high.isPresent()) {
      requirement.hottest(high.get().most(Temperature::parse));
    }
  }
}
