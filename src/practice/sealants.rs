//! Sealants: the families of public specifications.

use super::sources::sourced_vocabulary;

sourced_vocabulary! {
    /// The family of a loop sealant.
    SealantKind {
        OnePartMoistureCure "one_part_moisture_cure" "One-part, moisture cure" "Comes ready in a cartridge and cures from the surface down, with the moisture of the air: hours to a skin, days to a full cure, longer in the cold and in dry air." [TxDot6340 CommonPractice];
        TwoPartReactive "two_part_reactive" "Two-part, reactive" "Two components that cure by reacting with each other, in minutes when it is warm and without moisture: for traffic that must return the same hour, and for rain that is due." [TxDot6340 CommonPractice];
        HotApplied "hot_applied" "Hot-applied" "Melted in a kettle and poured; it does not cure, it cools. The wire's insulation must stand the pour." [TxDot6340];
    }
}
