package org.airfit.plug;

import java.util.List;
import org.airfit.measure.Access;
import org.airfit.measure.PartSpread;
import org.airfit.quantity.Length;
import org.airfit.source.Source;

/**
 * An invented reference set for demonstrations and tests.
 *
 * <p>No plug like these is sold; the numbers belong to nothing. Two of the four agree in everything but their widths,
 * so that the tip length leaves a doubt which the groove width settles.
 */
public final class DemoProfiles {

  private static final Source INVENTED =
      Source.demo("invented sizes of no real plug, for demonstration");

  private static final ReferenceSet BIRDS = ReferenceSet.of(
      "Demo birds (invented)",
      List.of(
          profile("demo-heron", "Demo Heron", new double[] {
            23.60, 29.30, 30.50, 46.00, 5.60, 21.80, 22.20, 27.60, 14.20
          }),
          profile("demo-curlew", "Demo Curlew", new double[] {
            18.76, 23.84, 21.00, 33.50, 4.20, 17.10, 15.20, 22.40, 10.60
          }),
          profile("demo-plover", "Demo Plover", new double[] {
            18.80, 23.88, 21.10, 33.60, 6.60, 17.16, 12.60, 22.44, 10.66
          }),
          profile("demo-sandpiper", "Demo Sandpiper", new double[] {
            17.05, 21.40, 25.20, 38.40, 5.00, 15.30, 18.10, 20.20, 9.40
          })));

  private DemoProfiles() {}

  /** {@return the set: Demo Heron, Demo Curlew, Demo Plover and Demo Sandpiper, all invented} */
  public static ReferenceSet birds() {
    return BIRDS;
  }

  /** Sizes in the order of {@link Dimension}, in millimetres. */
  private static PlugProfile profile(String id, String name, double[] sizes) {
    PlugProfile.Builder builder =
        PlugProfile.builder(id).displayName(name).from(Provenance.synthetic(), INVENTED);
    int next = 0;
    for (Dimension dimension : Dimension.values()) {
      double deviation = dimension.access() == Access.OUTSIDE ? 0.03 : 0.06;
      builder.dimension(
          dimension,
          PartSpread.normal(Length.ofMillimetres(sizes[next++]), Length.ofMillimetres(deviation)));
    }
    return builder.build();
  }
}
