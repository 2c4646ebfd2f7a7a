#include "mainbore/sanitary/lead_content.hpp"

#include <stdexcept>

namespace mainbore::sanitary {

Concentration weighted_lead_average(std::span<const WettedPart> parts) {
  Area total;
  Area lead;  // area, each part's taken by its share of lead
  for (const WettedPart& part : parts) {
    if (part.wetted_area < Area{} || part.lead < Concentration{}) {
      throw std::invalid_argument("weighted_lead_average: areas and lead must not be negative");
    }
    total += part.wetted_area;
    lead += part.lead.percent() * part.wetted_area;
  }
  if (!(total > Area{})) throw std::invalid_argument("weighted_lead_average: no wetted area");
  return Concentration::percent(lead / total);
}

}  // namespace mainbore::sanitary
