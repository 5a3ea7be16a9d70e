//! The parts of a dropping.

texts! {
    dropping_stool: "stool", "parte sólida";
    dropping_white: "white part (urates)", "parte blanca (uratos)";
    dropping_clear: "clear part (urine)", "parte líquida (orina)";
}
