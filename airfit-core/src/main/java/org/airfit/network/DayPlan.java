package org.airfit.network;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.airfit.plant.RegulatorElement;
import org.airfit.plant.SharedBand;
import org.airfit.plant.TimedCompressor;
import org.airfit.plant.WallHeat;
import org.airfit.quantity.AbsolutePressure;
import org.airfit.quantity.Temperature;

/**
 * What a {@link PlantDay} consists of, checked by it.
 *
 * @param atmosphere the pressure around it
 * @param temperature the temperature of the air in its receivers
 * @param length how long the day is
 * @param walls what the walls of the receivers do
 * @param receivers the receivers, in the order the air goes
 * @param compressors the compressors, in the order in which they are called
 * @param sharedBand the band that all share; empty where each has its own
 * @param regulator the regulator in front of the header; empty where there is none
 * @param uses the users
 */
record DayPlan(
    AbsolutePressure atmosphere,
    Temperature temperature,
    Duration length,
    WallHeat walls,
    List<LineReceiver> receivers,
    List<TimedCompressor> compressors,
    Optional<SharedBand> sharedBand,
    Optional<RegulatorElement> regulator,
    List<TimedUse> uses) {}
