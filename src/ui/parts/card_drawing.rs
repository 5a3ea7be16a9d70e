//! Plain line drawings of the cards of the first weeks, our own.

use leptos::prelude::*;

use crate::domain::homecoming::first_weeks::Picture;
use crate::ui::state::AppState;

impl Picture {
    /// Lines in ink.
    const fn ink(self) -> &'static str {
        match self {
            Self::Keel => {
                "M12 48C12 8 88 8 88 48M50 62V130M36 62H64M112 48C112 8 188 8 188 48M150 62V130M136 62H164M212 48C212 8 288 8 288 48M250 62V130M236 62H264"
            }
            Self::WarmSpot => {
                "M24 10H276V118H24zM136 102H236M146 102V118M226 102V118M43 34C43 27 53 27 53 34V60C60 65 57 77 48 77C39 77 36 65 43 60zM247 34C247 27 257 27 257 34V60C264 65 261 77 252 77C243 77 240 65 247 60zM180 100C170 84 172 66 182 56C180 38 206 38 206 54C212 72 208 88 200 100M206 50L216 56L206 61M196 50h.1M176 88L160 112"
            }
            Self::Scale => {
                "M24 142L34 108H116L126 142zM40 100H110M36 64V100H114V64M174 142L184 108H266L276 142zM190 100H260M186 64V100H264V64M206 94C198 72 202 52 212 42C210 24 236 22 238 40C244 60 244 80 236 94M238 36L248 42L238 47M229 36h.1M204 80L176 56"
            }
            Self::Holding => {
                "M40 142H260M108 142C96 108 108 84 126 74M192 142C204 108 192 84 174 74M124 46C124 10 176 10 176 46C176 66 168 78 150 78C132 78 124 66 124 46zM138 40h.1M162 40h.1M141 50C144 44 156 44 159 50L150 68zM52 142C58 108 76 80 104 62C102 44 112 28 126 32C134 36 130 46 122 48M84 142C88 116 96 98 110 84M175 24C186 20 192 30 184 34L177 36M177 38C188 34 194 44 186 48L176 50"
            }
            Self::CropPlaces => {
                "M40 142H260M112 142C88 112 96 84 124 68M188 142C212 112 204 84 176 68M124 42C124 6 176 6 176 42C176 60 168 70 150 70C132 70 124 60 124 42zM138 34h.1M162 34h.1M142 44C145 38 155 38 158 44L150 60z"
            }
        }
    }

    /// What matters, in the colour of the lamp.
    const fn lamp(self) -> &'static str {
        match self {
            Self::Keel => {
                "M12 48C16 92 42 70 50 130C58 70 84 92 88 48M112 48L150 130L188 48M212 48C206 96 226 132 250 132C274 132 294 96 288 48"
            }
            Self::WarmSpot => {
                "M24 132H146V142H24zM72 108C66 100 78 94 72 84M96 108C90 100 102 94 96 84M120 108C114 100 126 94 120 84"
            }
            Self::Scale => {
                "M75 116C65 116 65 136 75 136C85 136 85 116 75 116zM210 128h.1M225 128h.1M240 128h.1"
            }
            Self::Holding => "M286 96L222 80L164 66M184 60L164 66L178 82",
            Self::CropPlaces => {
                "M122 88C122 72 178 72 178 88C180 116 164 122 150 122C136 122 120 116 122 88zM278 122L186 114M200 106L184 114L198 124"
            }
        }
    }
}

/// The drawing of a card, told in words to those who do not see it.
#[component]
pub fn CardDrawing(
    /// What is drawn.
    picture: Picture,
) -> impl IntoView {
    let words = AppState::here().language().picture(picture);
    let parts = words
        .parts
        .iter()
        .map(|part| view! { <span>{*part}</span> });
    view! {
        <figure class="figure">
            <svg class="drawing" viewBox="0 0 300 150" role="img" aria-label=words.shows>
                <path class="drawing__ink" d=picture.ink()></path>
                <path class="drawing__lamp" d=picture.lamp()></path>
            </svg>
            <figcaption class="figure__parts hint">{parts.collect_view()}</figcaption>
        </figure>
    }
}
