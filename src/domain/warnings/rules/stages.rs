//! In which stages of a chick's life each rule holds.
//!
//! **Invariants.** Both matches name everything, so that neither a new rule nor a new stage compiles
//! before it is answered. Nothing holds for a chick that died.

use crate::domain::homecoming::life_stage::LifeStage;
use crate::domain::warnings::level::RuleId;

/// For how much of a life a rule holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Span {
    /// As long as it lives.
    Life,
    /// As long as it is looked after by the plan, the first day at the breeder's too.
    UntilGrown,
    /// From leaving the breeder until it is grown.
    AwayUntilGrown,
    /// From leaving the breeder until it is weaned.
    HandFed,
    /// Once it is weaned, until it is grown.
    Weaned,
}

const fn span(rule: RuleId) -> Span {
    match rule {
        // Illness looks the same at every age.
        RuleId::SignSeen(_)
        | RuleId::DroppingsSeen(_)
        | RuleId::FewDroppings
        | RuleId::DullLoss
        | RuleId::CropStatic => Span::Life,
        RuleId::OneDayLoss | RuleId::GrowthStalled => Span::UntilGrown,
        RuleId::FallingWeight | RuleId::NoWeighing | RuleId::VetVisitDue => Span::AwayUntilGrown,
        // A bird loses some of its peak while it is weaned and keeps that; its own level then counts.
        RuleId::HandoverLoss
        | RuleId::PeakLoss
        | RuleId::ArrivalLoss
        | RuleId::MissedFeeds
        | RuleId::NoFoodNoted
        | RuleId::DayIntake
        | RuleId::RefusedFeeds
        | RuleId::TransitGap
        | RuleId::GapTooShort
        | RuleId::VolumeOverCeiling
        | RuleId::ServedHot
        | RuleId::ServedCold
        | RuleId::CropSlow
        | RuleId::CropLate
        | RuleId::CropOvernight
        | RuleId::RoomTemperature => Span::HandFed,
        RuleId::StableLoss => Span::Weaned,
    }
}

/// Whether a rule holds in a stage.
pub const fn holds(rule: RuleId, stage: LifeStage) -> bool {
    match span(rule) {
        Span::Life => match stage {
            LifeStage::WithBreeder
            | LifeStage::OnTheWay
            | LifeStage::SettlingIn
            | LifeStage::Weaning
            | LifeStage::Weaned
            | LifeStage::Grown => true,
            LifeStage::Died => false,
        },
        Span::UntilGrown => match stage {
            LifeStage::WithBreeder
            | LifeStage::OnTheWay
            | LifeStage::SettlingIn
            | LifeStage::Weaning
            | LifeStage::Weaned => true,
            LifeStage::Grown | LifeStage::Died => false,
        },
        Span::AwayUntilGrown => match stage {
            LifeStage::OnTheWay
            | LifeStage::SettlingIn
            | LifeStage::Weaning
            | LifeStage::Weaned => true,
            LifeStage::WithBreeder | LifeStage::Grown | LifeStage::Died => false,
        },
        Span::HandFed => match stage {
            LifeStage::OnTheWay | LifeStage::SettlingIn | LifeStage::Weaning => true,
            LifeStage::WithBreeder | LifeStage::Weaned | LifeStage::Grown | LifeStage::Died => {
                false
            }
        },
        Span::Weaned => match stage {
            LifeStage::Weaned => true,
            LifeStage::WithBreeder
            | LifeStage::OnTheWay
            | LifeStage::SettlingIn
            | LifeStage::Weaning
            | LifeStage::Grown
            | LifeStage::Died => false,
        },
    }
}

#[cfg(test)]
mod tests {
    use crate::domain::journal::entries::Droppings;
    use crate::domain::journal::signs::Sign;
    use crate::domain::warnings::rules::stages::*;

    #[test]
    fn breathing_counts_in_every_living_stage_and_no_rule_after_death() {
        let breathing = RuleId::SignSeen(Sign::LabouredBreathing);
        for stage in LifeStage::ALL {
            assert_eq!(
                holds(breathing, stage),
                stage != LifeStage::Died,
                "{stage:?}"
            );
        }
        assert!(!holds(
            RuleId::DroppingsSeen(Droppings::Bloody),
            LifeStage::Died
        ));
    }

    #[test]
    fn the_weight_is_judged_by_the_handover_until_weaned_and_by_its_own_level_then() {
        for stage in LifeStage::ALL {
            let by_handover = holds(RuleId::HandoverLoss, stage);
            assert!(
                !by_handover || !holds(RuleId::StableLoss, stage),
                "{stage:?}"
            );
        }
        assert!(holds(RuleId::HandoverLoss, LifeStage::Weaning));
        assert!(holds(RuleId::StableLoss, LifeStage::Weaned));
        assert!(!holds(RuleId::NoWeighing, LifeStage::Grown));
    }
}
