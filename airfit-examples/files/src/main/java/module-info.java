/** Jobs, catalogues, reference sets and networks: JSON and CSV in and out. */
module org.airfit.files {
  requires static org.jspecify;
  requires transitive org.airfit.core;
  requires com.fasterxml.jackson.core;
  requires com.fasterxml.jackson.databind;

  exports org.airfit.files;
}
