package org.airfit.files;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.airfit.air.AirState;
import org.airfit.joint.End;
import org.airfit.quantity.FreeAirFlow;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.Range;
import org.airfit.safety.Medium;
import org.airfit.select.Environment;
import org.airfit.select.Lubrication;
import org.airfit.select.Requirement;
import org.airfit.select.Slot;
import org.airfit.select.ToolLine;

/** The tool of a job, and the conditions it works in. */
final class JobTool {

  private JobTool() {}

  /** Starts a requirement with the tool. */
  static Requirement.Builder of(Field tool, AirState around, List<String> remarks)
      throws WrongFileException {
    Optional<MarkingField> marked = MarkingField.in(tool);
    Range<FreeAirFlow> air = AirField.of(tool, marked, around, remarks);
    Range<GaugePressure> pressure = MarkingField.pressure(tool, marked, remarks);
    Field least =
        tool.find("pressure").or(() -> marked.map(MarkingField::field)).orElse(tool);
    Requirement.Builder requirement = least.build(() -> Requirement.forTool(air, pressure));
    requirement.toolInlet(EndField.in(tool.field("inlet", Accepted.END), remarks));
    Optional<Field> rating = tool.find("notAbove", Accepted.GAUGE);
    if (rating.isPresent()) {
      GaugePressure highest = rating.get().as(GaugePressure::parse);
      rating.get().build(() -> requirement.toolRating(highest));
    } else {
      marked.flatMap(MarkingField::allowed).ifPresent(requirement::toolRating);
    }
    if (tool.flag("hammers")) {
      requirement.impactTool();
    }
    if (tool.flag("whipHose")) {
      requirement.whipHose();
    }
    if (tool.flag("feedsFasteners")) {
      requirement.automaticFeed();
    }
    if (tool.flag("blasts")) {
      requirement.blasting();
    }
    if (tool.flag("paints")) {
      requirement.painting();
    }
    boolean cleans = tool.flag("cleans");
    Optional<Field> blocked = tool.find("atBlockedNozzle", Accepted.GAUGE);
    if (blocked.isPresent()) {
      GaugePressure deadEnd = blocked.get().as(GaugePressure::parse);
      blocked.get().build(() -> requirement.blowGun(deadEnd));
    } else if (cleans) {
      requirement.blowGun();
    }
    tool.requireNothingElse();
    return requirement;
  }

  /** A line to a tool, or several that are alike. */
  static ToolLine line(
      Field tool, int count, List<Slot> slots, AirState around, List<String> remarks)
      throws WrongFileException {
    String name = tool.field("name", "what the tool is").text();
    Optional<MarkingField> marked = MarkingField.in(tool);
    Range<FreeAirFlow> air = AirField.of(tool, marked, around, remarks);
    Range<GaugePressure> pressure = MarkingField.pressure(tool, marked, remarks);
    End inlet = EndField.in(tool.field("inlet", Accepted.END), remarks);
    ToolLine line =
        tool.build(() -> ToolLine.to(name, air, pressure, inlet, slots).alike(count));
    Optional<Field> rating = tool.find("notAbove", Accepted.GAUGE);
    if (rating.isPresent()) {
      ToolLine before = line;
      GaugePressure highest = rating.get().as(GaugePressure::parse);
      line = rating.get().build(() -> before.withToolRating(highest));
    } else {
      line = marked.flatMap(MarkingField::allowed).map(line::withToolRating).orElse(line);
    }
    line = tool.flag("hammers") ? line.withImpactTool() : line;
    line = tool.flag("whipHose") ? line.withOwnWhipHose() : line;
    line = tool.flag("feedsFasteners") ? line.withAutomaticFeed() : line;
    line = tool.flag("blasts") ? line.withBlasting() : line;
    line = tool.flag("paints") ? line.withPainting() : line;
    boolean cleans = tool.flag("cleans");
    Optional<Field> blocked = tool.find("atBlockedNozzle", Accepted.GAUGE);
    if (blocked.isPresent()) {
      ToolLine before = line;
      GaugePressure deadEnd = blocked.get().as(GaugePressure::parse);
      line = blocked.get().build(() -> before.withBlowGun(deadEnd));
    } else if (cleans) {
      line = line.withBlowGun();
    }
    tool.requireNothingElse();
    return line;
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
    Optional<PartFields.Temperatures> told = PartFields.Temperatures.in(field);
    if (told.isPresent()) {
      field.build(
          () -> requirement.temperatures(told.get().coldest(), told.get().hottest()));
    }
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
}
