package org.airfit.lesson;

import java.util.List;
import java.util.Set;
import org.airfit.flow.FlowCapacity;
import org.airfit.joint.End;
import org.airfit.line.Conduit;
import org.airfit.line.Wall;
import org.airfit.measure.PartSpread;
import org.airfit.plug.Dimension;
import org.airfit.plug.PlugProfile;
import org.airfit.plug.Provenance;
import org.airfit.plug.ReferenceSet;
import org.airfit.quantity.GaugePressure;
import org.airfit.quantity.HoseBore;
import org.airfit.quantity.Length;
import org.airfit.quantity.SonicConductance;
import org.airfit.select.Catalogue;
import org.airfit.select.Lubrication;
import org.airfit.select.Material;
import org.airfit.select.Part;
import org.airfit.select.PartFacts;
import org.airfit.source.Source;

/**
 * Tern Creek Boatyard and the Ferry Lane Air Counter, where all lessons take place.
 *
 * <p>Both are invented, and so are the plugs, parts and numbers. They are the same as in the example job of the job
 * sheet.
 */
public final class Boatyard {

  private static final Source INVENTED =
      Source.demo("made up for these lessons; no plug like it is sold");

  /** Dimensions that are turned: they vary less than lengths and grooves. */
  private static final Set<Dimension> TURNED =
      Set.of(Dimension.TIP_DIAMETER, Dimension.COLLAR_DIAMETER, Dimension.SHOULDER_DIAMETER);

  private Boatyard() {}

  /** {@return the three kinds of plug seen in the yard: Tern, Gannet and Skua} */
  public static ReferenceSet profiles() {
    return ReferenceSet.of(
        "Plugs of Tern Creek Boatyard (invented)",
        List.of(
            profile("tern", "Tern", 11.90, 15.10, 16.20, 26.40, 3.60, 10.70, 11.30, 13.60, 7.60),
            profile("gannet", "Gannet", 11.94, 15.14, 16.30, 26.50, 5.20, 10.74, 9.80, 13.64, 7.70),
            profile("skua", "Skua", 9.20, 12.40, 19.50, 29.80, 4.40, 8.30, 14.10, 11.00, 5.20)));
  }

  /** Sizes in the order of {@link Dimension}, in millimetres. */
  private static PlugProfile profile(String id, String name, double... sizesMillimetres) {
    PlugProfile.Builder builder =
        PlugProfile.builder(id).displayName(name).from(Provenance.synthetic(), INVENTED);
    int next = 0;
    for (Dimension dimension : Dimension.values()) {
      double deviation = TURNED.contains(dimension) ? 0.03 : 0.06;
      builder.dimension(
          dimension,
          PartSpread.normal(
              Length.ofMillimetres(sizesMillimetres[next++]), Length.ofMillimetres(deviation)));
    }
    return builder.build();
  }

  /** {@return what the counter has on its shelf} */
  public static Catalogue catalogue() {
    return Catalogue.of(List.of(
        new Part.Socket(
            facts("S-10", "Socket Gannet, steel, 3/8 NPT female", 16.0)
                .withMaterial(Material.HARDENED_STEEL),
            Set.of("gannet"),
            End.parse("3/8 NPT female"),
            capacity(8.4, 0.28)),
        new Part.Socket(
            facts("S-11", "Socket Gannet, stainless, guarded, 3/8 NPT female", 16.0)
                .withMaterial(Material.STAINLESS_STEEL)
                .withSleeveGuarded(),
            Set.of("gannet"),
            End.parse("3/8 NPT female"),
            capacity(8.1, 0.28)),
        new Part.Socket(
            facts("S-12", "Socket Gannet, stainless, 1/2 NPT male", 16.0)
                .withMaterial(Material.STAINLESS_STEEL),
            Set.of("gannet"),
            End.parse("1/2 NPT male"),
            capacity(8.6, 0.27)),
        new Part.Socket(
            facts("S-30", "Socket Skua, brass, 1/4 NPT female", 12.0).withMaterial(Material.BRASS),
            Set.of("skua"),
            End.parse("1/4 NPT female"),
            capacity(4.2, 0.25)),
        plug("P-10", "Plug Gannet, stainless, 1/4 NPT male", "1/4 NPT male"),
        plug("P-11", "Plug Gannet, stainless, 3/8 NPT female", "3/8 NPT female"),
        hose(facts("H-38", "Hose 3/8 in, 10 m", 15.0), "3/8 in", 9.5, 1.5),
        hose(facts("H-12", "Hose 1/2 in, 10 m", 15.0), "1/2 in", 12.7, 2.5),
        hose(
            facts("H-13", "Hose 1/2 in, 10 m, kept for oiled air", 15.0)
                .withLubrication(Lubrication.LUBRICATED)
                .asExisting(),
            "1/2 in",
            12.7,
            2.5),
        adapter("A-1", "Reducing nipple 1/2 x 3/8 NPT", "1/2 NPT male", "3/8 NPT male", 11.0, 42.0),
        adapter(
            "A-2",
            "Bushing 3/8 male x 1/4 NPT female",
            "3/8 NPT male",
            "1/4 NPT female",
            10.0,
            18.0)));
  }

  private static PartFacts facts(String id, String name, double ratedBar) {
    return PartFacts.of(id, name).withRating(GaugePressure.ofBar(ratedBar));
  }

  private static FlowCapacity capacity(double conductance, double criticalPressureRatio) {
    return FlowCapacity.of(
        SonicConductance.ofCubicDecimetresPerSecondBar(conductance), criticalPressureRatio);
  }

  private static Part plug(String id, String name, String end) {
    return new Part.Plug(
        facts(id, name, 16.0).withMaterial(Material.STAINLESS_STEEL), "gannet", End.parse(end));
  }

  private static Part hose(PartFacts facts, String bore, double boreMillimetres, double fittings) {
    Conduit conduit = Conduit.of(
            Length.ofMillimetres(boreMillimetres),
            Length.ofMetres(10.0),
            Length.ofMillimetres(0.01))
        .withFittings(fittings)
        .withWall(Wall.SMOOTH_RUBBER_HOSE);
    End end = End.parse("3/8 NPT male");
    return new Part.Hose(
        facts.withMaterial(Material.BRASS), HoseBore.parse(bore), conduit, end, end);
  }

  private static Part adapter(
      String id,
      String name,
      String one,
      String other,
      double boreMillimetres,
      double lengthMillimetres) {
    Conduit conduit = Conduit.of(
            Length.ofMillimetres(boreMillimetres),
            Length.ofMillimetres(lengthMillimetres),
            Length.ofMillimetres(0.05))
        .withFittings(1.5);
    return new Part.Adapter(
        facts(id, name, 20.0).withMaterial(Material.BRASS),
        End.parse(one),
        End.parse(other),
        conduit);
  }
}
