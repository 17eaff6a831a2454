/** Job sheets and network sheets: as text, as pages, and the program that prints them. */
module org.airfit.jobsheet {
  requires static org.jspecify;
  requires transitive org.airfit.core;
  requires transitive org.airfit.files;

  exports org.airfit.jobsheet;
}
