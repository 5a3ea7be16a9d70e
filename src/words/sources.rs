//! Where the limit of a finding comes from: the manual's own line in English, the same in Spanish.

use crate::domain::warnings::level::{Finding, RuleId};
use crate::domain::warnings::rules;
use crate::words::Language;

/// Where the limit of a finding comes from, and how far it can be trusted.
pub fn source_line(language: Language, finding: &Finding) -> String {
    let source = source(language, finding.rule);
    let standing = language.standing(finding.standing);
    match language {
        Language::English => format!("Source: {source}. This limit: {standing}."),
        Language::Spanish => format!("Fuente: {source}. Este límite: {standing}."),
    }
}

/// The sources of a rule: the manual's own line in English, the same in Spanish.
pub(crate) const fn source(language: Language, rule: RuleId) -> &'static str {
    let spanish = match rule {
        RuleId::HandoverLoss => {
            "10 %: Duerr & Gage 2020, p. 599; los demás pasos: valor propio; otro límite: del \
             criador"
        }
        RuleId::StableLoss => {
            "peso estable tras el destete: gráfico de un instituto de investigación; todos los \
             límites: valor propio"
        }
        RuleId::PeakLoss => {
            "10 %: Watchbird nov/dic 1999; Duerr & Gage 2020, p. 599; 20 % de media en polluelos \
             destetados: Groffen 2008; los pasos: valor propio"
        }
        RuleId::FallingWeight => {
            "razón de verosimilitud: Willsky & Jones 1976; ritmo y número de veces: valor propio, \
             probado con polluelos simulados"
        }
        RuleId::ArrivalLoss => "práctica común de los criadores",
        RuleId::OneDayLoss => {
            "5 % y 10 % como pérdidas importantes: páginas sobre el peso de las aves; para un \
             solo día: valor propio"
        }
        RuleId::DullLoss => {
            "páginas de veterinarios de aves sobre el peso: cualquier pérdida con otras \
             señales"
        }
        RuleId::GrowthStalled => {
            "dos días: Duerr & Gage 2020, p. 599; un día y la edad hasta la que cuenta: \
             valor propio"
        }
        RuleId::NoWeighing => "pesar a diario: Duerr & Gage 2020, p. 599; las horas: valor propio",
        RuleId::MissedFeeds => {
            "tres tomas, 24 h y, con cañones, 8 h: práctica común; lo demás: valor propio"
        }
        RuleId::DayIntake => {
            "12 % del peso es lo que pide la papilla sola para mantenerlo: calculado; lo demás: \
             valor propio"
        }
        RuleId::NoFoodNoted => "24 h: práctica común; el intervalo más largo y 2 h: valor propio",
        RuleId::RefusedFeeds => "práctica común",
        RuleId::TransitGap => "práctica común con polluelos emplumados de 8 a 12 semanas",
        RuleId::GapTooShort => {
            "6 h de noche: página clínica sobre nutrición de polluelos; estasis por exceso: \
             Rivera 2008; los pasos: valor propio"
        }
        RuleId::VolumeOverCeiling => {
            "10 %: página clínica sobre nutrición de polluelos; Duerr & Gage 2020, p. 210; 12 % \
             y los máximos: valor propio"
        }
        RuleId::ServedHot => {
            "43,3 °C: Rivera 2008; marcas hasta dos semanas: Vet Times, 18 feb 2019; por \
             debajo de 43,3 °C: valor propio"
        }
        RuleId::ServedCold => {
            "rechazo de comida fría: Duerr & Gage 2020, p. 190; 38,0 °C y los pasos: valor propio"
        }
        RuleId::CropSlow => {
            "estasis del buche: Rivera 2008; 1,25: valor propio, por debajo del 1,5 de la práctica \
             común"
        }
        RuleId::CropLate => "6 h: Doneley 2018, p. 594; 2 h y 8 h: valor propio",
        RuleId::CropOvernight => {
            "6 h: Doneley 2018, pp. 592 y 594; el veterinario por la mañana: página de un \
             instituto; los tramos: valor propio"
        }
        RuleId::CropStatic => {
            "páginas de veterinarios de aves sobre la estasis del buche; Rivera 2008"
        }
        RuleId::DroppingsSeen(_) => {
            "colores: páginas de veterinarios de aves; todo líquido: página de un centro de rescate; \
             sin digerir, mucha agua, 12 h y 24 h: práctica común; las demás horas, pequeñas, oscuras o \
             pocas: valor propio"
        }
        RuleId::FewDroppings => {
            "de noche no hacen: Duerr & Gage 2020, p. 588; ninguna en 8 h despierto: práctica común; \
             la mitad y los días de los que se aprende: valor propio"
        }
        RuleId::SignSeen(_) => {
            "señales: Duerr & Gage 2020, Romagnano, Rivera 2008; comida regurgitada: Groffen 2008; \
             los niveles y las horas: valor propio"
        }
        RuleId::RoomTemperature => {
            "24 a 27 °C: Watchbird, Parrot pediatrics; 28 a 31 °C con cañones: un manual de cría, 1999; 21, 26, 30 y 32 °C y la llamada: valor propio"
        }
        RuleId::VetVisitDue => "primera visita en 48 a 72 h: contratos de criadores",
    };
    match language {
        Language::English => rules::rule(rule).source,
        Language::Spanish => spanish,
    }
}
