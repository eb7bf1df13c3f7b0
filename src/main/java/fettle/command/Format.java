package fettle.command;

/** The forms in which findings can be had. */
enum Format {
    TEXT,
    JSON,
    SARIF
}
