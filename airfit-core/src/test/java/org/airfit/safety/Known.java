package org.airfit.safety;

/** The rules that the tests speak of, by their citations. */
final class Known {

  static final SafetyRule DEPRESSURISE = SafetyRules.bundled().rule("ISO 4414:1998 clause 9.6");
  static final SafetyRule RATED_PRESSURE = SafetyRules.bundled().rule("29 CFR 1926.302(b)(5)");
  static final SafetyRule HOSE_FAILURE = SafetyRules.bundled().rule("29 CFR 1926.302(b)(7)");
  static final SafetyRule HOSE_CHAIN_COAL = SafetyRules.bundled().rule("30 CFR 77.412(d)");
  static final SafetyRule HOSE_CHAIN_METAL = SafetyRules.bundled().rule("30 CFR 56.13021");
  static final SafetyRule ENERGY_ISOLATION =
      SafetyRules.bundled().rule("29 CFR 1910.147, control of hazardous energy");
  static final SafetyRule CONNECTION_RESTRAINT =
      SafetyRules.bundled().rule("29 CFR 1926.302(b)(1)");
  static final SafetyRule IMPACT_RETAINER = SafetyRules.bundled().rule("29 CFR 1926.302(b)(2)");
  static final SafetyRule WHIP_HOSE =
      SafetyRules.bundled().rule("whip hose between percussion tool and coupler");
  static final SafetyRule MUZZLE_CONTACT = SafetyRules.bundled().rule("29 CFR 1926.302(b)(3)");
  static final SafetyRule CLEANING_GENERAL_INDUSTRY =
      SafetyRules.bundled().rule("29 CFR 1910.242(b)");
  static final SafetyRule CLEANING_CONSTRUCTION =
      SafetyRules.bundled().rule("29 CFR 1926.302(b)(4)");
  static final SafetyRule CLEANING_MARINE_TERMINALS = SafetyRules.bundled().rule("29 CFR 1917.154");
  static final SafetyRule CLOTHING = SafetyRules.bundled().rule("Title 8 section 3301(a)");
  static final SafetyRule CLEANING_PROTECTION =
      SafetyRules.bundled().rule("29 CFR 1910.242(b); 29 CFR 1926.302(b)(4); 29 CFR 1917.154");
  static final SafetyRule RECEIVER = SafetyRules.bundled().rule("29 CFR 1910.169(b)(3)");
  static final SafetyRule HOISTING = SafetyRules.bundled().rule("29 CFR 1926.302(b)(6)");
  static final SafetyRule FEDERAL_COUPLERS =
      SafetyRules.bundled().rule("A-A-59439 (supersedes MIL-C-4109F)");

  private Known() {}
}
